#!/usr/bin/python3
"""The measures of channelaudit screen in NumPy and SciPy, as a careful analyst would write them: whole arrays, no loop over samples.

    reference.py RECORDING.edf OUT

writes OUT/measures.tsv (channel, trial, measure, value) and OUT/pairs.tsv. It shares no code with the program; the formulas are those of docs/measures.
EDF+ without gaps, one whole rate in Hz, no setup: every channel is audited, trials are the annotations with a duration, nothing is known of rest.
"""
import sys

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from scipy import fft, signal

LOW_HZ, PAIR_HZ, HIGH_HZ = (2, 15), (30, 250), (300, 450)
MIDDLE_HZ, TOP_SHARE = (80, 150), 0.8
BEST_SHARE = 0.9999


class Recording:
    """Samples in microvolts, [channel, sample], with what the header says of each channel and the events."""

    def __init__(self, path):
        raw = open(path, "rb").read()
        count = int(raw[252:256])
        at = 256

        def field(width):
            nonlocal at
            cells = [raw[at + i * width:at + (i + 1) * width].decode("latin-1").strip() for i in range(count)]
            at += width * count
            return cells

        labels, _, _ = field(16), field(80), field(8)
        low, high, code_low, code_high = ([float(cell) for cell in field(8)] for _ in range(4))
        field(80)
        lengths = [int(cell) for cell in field(8)]
        records, seconds, size = int(raw[236:244]), float(raw[244:252]), sum(lengths)
        codes = np.frombuffer(raw, "<i2", records * size, int(raw[184:192])).reshape(records, size)
        starts = np.concatenate(([0], np.cumsum(lengths)))
        kept = [i for i in range(count) if labels[i] != "EDF Annotations"]
        self.labels = [labels[i] for i in kept]
        self.rate = lengths[kept[0]] / seconds
        self.step = np.array([(high[i] - low[i]) / (code_high[i] - code_low[i]) for i in kept])
        self.rails = [(low[i], high[i]) for i in kept]
        self.codes = np.stack([codes[:, starts[i]:starts[i + 1]].ravel() for i in kept])
        self.samples = np.stack([low[i] + (self.codes[k] - code_low[i]) * self.step[k] for k, i in enumerate(kept)])
        notes = labels.index("EDF Annotations")
        self.events = list(self.events_of(codes[:, starts[notes]:starts[notes + 1]]))

    @staticmethod
    def events_of(cells):
        for record in cells:
            for note in record.tobytes().split(b"\x00"):
                onset, mark, duration = note.partition(b"\x14")[0].partition(b"\x15")
                if mark:
                    yield float(onset), float(duration)


def effective(segments):
    """Independent segments among overlapping Hann segments: neighbours share 1/6 of their amplitude."""
    return segments / (1 + 2 * (segments - 1) / segments / 36)


class Frame:
    """Bins of the bands and of the mains for one-second segments."""

    def __init__(self, rate):
        self.rate, self.length = rate, int(rate)
        self.hz = np.arange(self.length // 2 + 1) * rate / self.length
        self.width = rate / self.length
        self.hop = self.length // 2
        self.window = signal.get_window("hann", self.length)
        self.scale = 2 / (rate * np.sum(self.window ** 2))
        corner = signal.butter(2, 20, "high", fs=rate, output="sos")
        self.filter = corner
        self.passes = np.abs(signal.sosfreqz(corner, self.hz, fs=rate)[1]) ** 2
        self.top_hz = min(450, 0.45 * rate)

    def set_mains(self, nominal, found):
        centers = np.array([int(h * found / self.width + 0.5) for h in range(1, int((self.rate / 2 + 2) / found) + 1)])
        self.is_line = np.zeros(self.hz.size, bool)
        for offset in range(-2, 3):
            at = centers + offset
            self.is_line[at[at < self.hz.size]] = True
        self.harmonics = [c for h, c in enumerate(centers, 1) if h * nominal + 2 <= self.top_hz]
        self.band = self.between(20, self.top_hz)
        self.open = self.band & ~self.is_line
        self.spread = self.band.sum() / self.open.sum()
        self.low = self.between(*LOW_HZ)
        self.middle = self.between(*MIDDLE_HZ) & ~self.is_line
        self.top = self.between(TOP_SHARE * self.top_hz, self.top_hz) & ~self.is_line
        self.pair = self.between(*PAIR_HZ) & ~self.is_line
        self.pair_high = self.between(*HIGH_HZ) & ~self.is_line

    def between(self, low, high):
        return (self.hz >= low - 1e-9) & (self.hz <= high + 1e-9)

    def spectra(self, samples):
        """Transforms of the half-overlapping seconds of [channel, sample]: [channel, segment, bin]."""
        pieces = sliding_window_view(samples, self.length, axis=-1)[:, ::self.hop]
        return fft.rfft((pieces - pieces.mean(-1, keepdims=True)) * self.window, axis=-1)

    def density(self, power):
        """One-sided density of a mean |X|²."""
        density = power * self.scale
        density[..., 0] /= 2
        density[..., -1] /= 2
        return density


def squared(spectrum):
    return spectrum.real ** 2 + spectrum.imag ** 2


def around(density, bins):
    """The bins 3 to 10 away on both sides: [..., bin, 16]."""
    offsets = np.concatenate((np.arange(-10, -2), np.arange(3, 11)))
    return density[..., np.asarray(bins)[:, None] + offsets]


def find_mains(recording, frame):
    """50 or 60 Hz, whichever stands out more in single seconds spread over the recording, refined in 16 s where it is clear."""
    length, seconds = frame.length, recording.samples.shape[1] // frame.length
    every = max(1, (seconds // 16 + 1) * 16 // 600)
    chosen = np.array([s for s in range(seconds) if s // 16 % every == 0])
    best = (-1.0, 50, 0, 0)
    for channel, samples in enumerate(recording.samples):
        pieces = samples[:seconds * length].reshape(seconds, length)[chosen]
        power = frame.density(squared(fft.rfft((pieces - pieces.mean(1, keepdims=True)) * frame.window)))
        for nominal in (50, 60):
            bins = [int(nominal / frame.width)]
            peak = power.mean(0)[bins[0] - 1:bins[0] + 2].max() / np.median(around(power.mean(0), bins))
            if peak > best[0]:
                each = power[:, bins[0] - 1:bins[0] + 2].max(1) / np.median(around(power, bins)[:, 0], axis=1)
                best = (peak, nominal, channel, chosen[np.argmax(each)] * length)
    _, nominal, channel, place = best
    size = 1 << int(np.ceil(np.log2(16 * frame.rate)))
    size = min(size, 1 << int(np.log2(recording.samples.shape[1])))
    start = min(max(place - size // 2, 0), recording.samples.shape[1] - size)
    piece = recording.samples[channel, start:start + size]
    power = squared(fft.rfft((piece - piece.mean()) * signal.get_window("hann", size)))
    width = frame.rate / size
    peak = np.arange(int(np.ceil(nominal * 0.99 / width)), int(nominal * 1.01 / width) + 1)
    peak = peak[np.argmax(power[peak])]
    if power[peak] < 4 * np.median(around(power, [peak])):
        return nominal, float(nominal)
    left, right = np.log(power[peak - 1] / power[peak]), np.log(power[peak + 1] / power[peak])
    return nominal, (peak + np.clip((left - right) / (2 * (left + right)), -0.5, 0.5)) * width


def line_power(density, segments, frame, passes=None):
    """Mains and harmonics: five bins each above the median beside them. density [window, bin], segments [window]."""
    floor = np.median(around(density, frame.harmonics), axis=-1) / ((1 - 1 / (9 * effective(segments))) ** 3)[:, None]
    bins = np.asarray(frame.harmonics)[:, None] + np.arange(-2, 3)
    share = np.ones(frame.hz.size) if passes is None else passes
    excess = ((density[:, bins] - floor[..., None]) * share[bins]).sum(-1)
    return np.maximum(0, excess).sum(1) * frame.width


def narrow_peak(density, segments, frame, passes=None):
    """The strongest peak of which five bins hold 80 % of what ten bins on each side hold: power and frequency of every window."""
    bins = np.flatnonzero(frame.open)
    bins = bins[(bins >= np.flatnonzero(frame.band)[0] + 2) & (bins <= np.flatnonzero(frame.band)[-1] - 2)]
    window, at = np.nonzero((density[:, bins] > density[:, bins - 1]) & (density[:, bins] >= density[:, bins + 1]))
    at = bins[at]
    near = density[window[:, None], at[:, None] + np.arange(-10, 11)]
    beside = frame.is_line[at[:, None] + np.arange(-10, 11)]
    floor = np.median(near[:, [0, 1, 2, 3, 4, 5, 6, 7, 13, 14, 15, 16, 17, 18, 19, 20]], axis=1)
    floor /= ((1 - 1 / (9 * effective(segments))) ** 3)[window]
    raw = np.maximum(0, (near[:, 8:13] - floor[:, None]).sum(1))
    wide = np.where(beside, 0, near - floor[:, None]).sum(1)
    above_line = ~(beside[:, 4:17] & (near[:, 4:17] >= near[:, 10:11])).any(1)
    power = raw if passes is None else np.maximum(0, ((near[:, 8:13] - floor[:, None]) * passes[at[:, None] + np.arange(-2, 3)]).sum(1))
    power = np.where((raw >= 0.8 * wide) & above_line, power, 0) * frame.width
    best, hz = np.zeros(len(density)), np.zeros(len(density))
    order = np.argsort(power, kind="stable")
    best[window[order]] = power[order]
    centre = (near[:, 9:12] * (at[:, None] + np.arange(-1, 2))).sum(1) / near[:, 9:12].sum(1) * frame.width
    hz[window[order]] = centre[order]
    return best, hz


def decibel(power, other):
    with np.errstate(divide="ignore"):
        return 10 * np.log10(power / other)


def shift(power, total):
    """By how much an added power raises the mean rectified amplitude, in %."""
    return 100 * (1 / np.sqrt(1 - np.clip(power / total, 0, BEST_SHARE)) - 1)


def spectral_measures(density, segments, frame):
    """All that a mean density tells: a column each, a row a window."""
    passes = frame.passes
    emg = density[:, frame.open].sum(1) * frame.width * frame.spread
    left = density * passes
    emg_left = left[:, frame.open].sum(1) * frame.width * frame.spread
    low, low_left = density[:, frame.low].sum(1) * frame.width, left[:, frame.low].sum(1) * frame.width
    line, line_left = line_power(density, segments, frame), line_power(density, segments, frame, passes)
    (narrow, hz), (narrow_left, _) = narrow_peak(density, segments, frame), narrow_peak(density, segments, frame, passes)
    top, middle = density[:, frame.top].mean(1), density[:, frame.middle].mean(1)
    total = left[:, 1:].sum(1) * frame.width
    white = np.maximum(0, top - 0.1 * middle) / 0.9
    last = np.flatnonzero(frame.band)[-1]
    above = np.where(white > 0, left[:, last + 1:].sum(1), 0)
    noise = np.minimum(total, (white * passes[1:last + 1].sum() + above) * frame.width)
    return {
        "line_rms": np.sqrt(line), "line_ratio": decibel(line, emg),
        "line_left": np.sqrt(line_left), "line_left_ratio": decibel(line_left, emg_left),
        "narrow_rms": np.sqrt(narrow), "narrow_ratio": decibel(narrow, emg - narrow * frame.spread), "narrow_hz": hz,
        "narrow_left": np.sqrt(narrow_left), "narrow_left_ratio": decibel(narrow_left, emg_left - narrow_left * frame.spread),
        "emg_rms": np.sqrt(emg), "rest_rms": np.sqrt(emg), "whiteness": top / middle,
        "lowfreq_rms": np.sqrt(low), "lowfreq_ratio": low / emg, "lowfreq_left": np.sqrt(low_left), "lowfreq_left_ratio": low_left / emg_left,
        "line_effect": shift(line_left, total), "narrow_effect": shift(narrow_left, total),
        "lowfreq_effect": shift(low_left, total), "noise_effect": shift(noise, total),
    }


def runs(is_in):
    """Starts and ends of the runs of true."""
    edges = np.flatnonzero(np.diff(np.concatenate(([False], is_in, [False])).astype(np.int8)))
    return edges[::2], edges[1::2]


def theil_sen(x, y):
    """The median of the slopes of all pairs of points."""
    slopes = np.empty(x.size * (x.size - 1) // 2)
    at = 0
    for lag in range(1, x.size):
        slopes[at:at + x.size - lag] = (y[lag:] - y[:-lag]) / (x[lag:] - x[:-lag])
        at += x.size - lag
    return np.median(slopes, overwrite_input=True)


def levels_of(samples, frame):
    """One baseline level a second: the median of ten means."""
    seconds = samples.shape[-1] // frame.length
    return np.median(samples[..., :seconds * frame.length].reshape(-1, seconds, 10, frame.length // 10).mean(-1), axis=-1)


def drift(levels, rate_start, rails):
    minutes = (rate_start + 0.5 + np.arange(levels.size)) / 60
    low, high = np.quantile(levels, (0.05, 0.95))
    room = min((rails[1] - levels.max()) / abs(rails[1]), (levels.min() - rails[0]) / abs(rails[0]))
    return {"drift_slope": theil_sen(minutes, levels), "drift_range": high - low, "headroom": max(0, 100 * room)}


class Scan:
    """Rails, runs at them, flat stretches of one channel."""

    def __init__(self, recording, channel, rate):
        self.codes = recording.codes[channel]
        self.rails, self.step = recording.rails[channel], recording.step[channel]
        self.check_rails()
        low = round(self.rails[0] / self.step) + 1
        high = round(self.rails[1] / self.step) - 1
        self.at_rail = (self.codes <= low) | (self.codes >= high) if self.codes.min() <= low or self.codes.max() >= high else None
        self.flat = self.flat_of(rate)

    def check_rails(self):
        """A rail hidden in the data piles samples up at the extreme; this script reads recordings without one."""
        counts = np.bincount(self.codes.astype(np.int32) + 32768, minlength=65536)
        used = np.flatnonzero(counts)
        for pile in (counts[used[-1]:used[-1] - 6:-1], counts[used[0]:used[0] + 6]):
            if pile[:2].sum() >= 6 and pile[:2].sum() >= 4 * pile[2:].sum():
                sys.exit("a rail inside the range: not for this script")

    def flat_of(self, rate):
        same = self.codes[1:] == self.codes[:-1]
        if same.mean() > 0.2:
            sys.exit("a step as large as the noise: not for this script")
        least, still = max(12, int(np.ceil(0.025 * rate))), int(round(0.1 * rate))
        flat = np.zeros(self.codes.size, bool)
        for start, end in zip(*runs(same)):
            if end - start + 1 >= least:
                flat[start:end + 1] = True
        blocks = self.codes[:self.codes.size // (still // 2) * (still // 2)].reshape(-1, still // 2)
        if (blocks.max(1).astype(int) - blocks.min(1) <= 1).any():
            sys.exit("a still stretch: not for this script")
        return flat if flat.any() else None

    def share_and_run(self, places, start, end, rate):
        if places is None:
            return 0.0, 0.0
        inside = places[start:end]
        first, last = runs(inside)
        return 100 * inside.mean(), (last - first).max(initial=0) * 1000 / rate

    def measures(self, samples, start, end, rate):
        clipped, clipped_run = self.share_and_run(self.at_rail, start, end, rate)
        flat, flat_run = self.share_and_run(self.flat, start, end, rate)
        middle = np.median(samples)
        distance = min(middle - self.rails[0], self.rails[1] - middle)
        use = 100 * np.quantile(np.abs(samples - middle), 0.999) / distance
        return {
            "clipped": clipped, "clipped_run": clipped_run, "flat": flat, "flat_run": flat_run, "peak_use": use,
            "flat_effect": -flat, "missing": 0.0, "gap": 0.0,
        }


def spikes(samples, frame):
    """Short, lonely spikes: where a pop is possible. samples of one channel."""
    start = signal.sosfilt_zi(frame.filter) * samples[0]
    size = np.abs(signal.sosfilt(frame.filter, samples, zi=start)[0])
    found = []
    ms = frame.rate / 1000
    for top in signal.find_peaks(size, height=2 * np.quantile(size[::4], 0.99), distance=int(10 * ms))[0]:
        height = size[top]
        near, far = int(round(5 * ms)), int(round(25 * ms))
        if (size[max(0, top - far):top - near] > height / 2).any() or (size[top + near + 1:top + far + 1] > height / 2).any():
            continue
        before, after = size[max(0, top - int(100 * ms)):max(1, top - int(10 * ms) + 1)], size[top + int(10 * ms):top + int(100 * ms) + 1]
        if height < 8 * np.sqrt(np.mean(before ** 2)) or (after.size and height < 8 * np.sqrt(np.mean(after ** 2))):
            continue
        second = size[max(0, top - frame.length // 2):top + frame.length // 2]
        if height >= 14.826 * np.median(second):
            found.append(top)
    return found


def pair_rows(cross, densities, segments, frame):
    """What two channels share. cross: mean conj(A) B as density, [bin]; densities: two of [bin]."""
    low, high = frame.pair, frame.pair_high
    real, (a, b) = cross[low].real.sum(), (densities[0][low], densities[1][low])
    power_a, power_b = a.sum(), b.sum()
    return {
        "rho": real / np.sqrt(power_a * power_b),
        "rho_high": cross[high].real.sum() / np.sqrt(densities[0][high].sum() * densities[1][high].sum()),
        "distance": 1 - 2 * abs(real) / (power_a + power_b),
        "coherence": np.median(squared(cross[low]) / (a * b)) if segments > 1 else np.nan,
        "gain_ab": real / power_a,
        "gain_ba": real / power_b,
    }


def states(powers, lows, quiet, rest, a, b):
    """Segments at rest of both, in contractions of the first, of the second."""
    moves = [(lows[i] >= powers[i]) & (lows[i] >= 100) for i in (a, b)]
    both_quiet = quiet[a] & quiet[b]
    rise_a, rise_b = powers[a] / rest[a], powers[b] / rest[b]
    alike = (1.25 * powers[a] >= powers[b]) & (1.25 * powers[b] >= powers[a]) & (np.maximum(rise_a, rise_b) >= 10)
    active_a = ~both_quiet & (((rise_a >= 10) & (1.25 * rise_a >= rise_b)) | alike)
    active_b = ~both_quiet & (((rise_b >= 10) & (1.25 * rise_b >= rise_a)) | alike)
    alone = (~both_quiet & ((rise_a >= 10) ^ (rise_b >= 10))).any()
    if not alone and min(active_a.sum(), active_b.sum()) < 3:
        active_a = active_b = active_a | active_b
    return {"rest": both_quiet & ~moves[0] & ~moves[1], "active_a": active_a, "active_b": active_b}


class Reference:
    """All measures of a recording, collected as rows."""

    def __init__(self, path):
        self.recording = Recording(path)
        self.frame = Frame(self.recording.rate)
        self.frame.set_mains(*find_mains(self.recording, self.frame))
        self.channels = range(len(self.recording.labels))
        self.pairs = [(a, b) for a in self.channels for b in self.channels if a < b]
        rate = self.frame.rate
        self.trials = [(int(round(onset * rate)), int(round((onset + length) * rate))) for onset, length in self.recording.events]
        self.measures, self.pair_lines = [], []
        self.scans = [Scan(self.recording, channel, rate) for channel in self.channels]
        self.read_trials()
        self.read_whole()

    def add(self, channel, trial, values):
        self.measures += [(self.recording.labels[channel], trial, name, value) for name, value in values.items()]

    def add_pair(self, a, b, trial, values):
        self.pair_lines.append((self.recording.labels[a], self.recording.labels[b], trial, *values.values()))

    def read_trials(self):
        frame, samples = self.frame, self.recording.samples
        densities, segments = np.empty((len(self.channels), len(self.trials), frame.hz.size)), np.empty(len(self.trials), int)
        settle = signal.sosfilt_zi(frame.filter)
        for number, (start, end) in enumerate(self.trials):
            piece = samples[:, start:end]
            spectra = frame.spectra(piece)
            densities[:, number], segments[number] = frame.density(squared(spectra).mean(1)), spectra.shape[1]
            scores = np.abs(signal.sosfilt(frame.filter, piece, zi=settle[:, None, :] * piece[None, :, :1])[0]).mean(1)
            levels = levels_of(piece, frame)
            for channel, scan in enumerate(self.scans):
                self.add(channel, number + 1, {
                    "rectified": scores[channel],
                    **scan.measures(piece[channel], start, end, frame.rate),
                    **drift(levels[channel], start / frame.rate, scan.rails),
                })
            if end - start >= 2 * frame.rate:
                for a, b in self.pairs:
                    cross = (np.conj(spectra[a]) * spectra[b]).mean(0) * frame.scale
                    self.add_pair(a, b, number + 1, pair_rows(cross, densities[[a, b], number], segments[number], frame))
        for channel in self.channels:
            columns = spectral_measures(densities[channel], segments, frame)
            for number in range(len(self.trials)):
                self.add(channel, number + 1, {name: column[number] for name, column in columns.items()})

    def read_whole(self):
        frame, samples = self.frame, self.recording.samples
        spectra = np.empty((len(self.channels), (samples.shape[1] - frame.length) // frame.hop + 1, frame.hz.size), complex)
        for channel in self.channels:
            spectra[channel] = frame.spectra(samples[[channel]])[0]
        powers = squared(spectra)
        densities, count = frame.density(powers.mean(1)), spectra.shape[1]
        band = powers[..., frame.open].sum(-1) * frame.scale * frame.width * frame.spread
        low = powers[..., frame.low].sum(-1) * frame.scale * frame.width
        starts = np.arange(count) * frame.hop
        quiet, rest = [], []
        for channel, scan in enumerate(self.scans):
            found = spikes(samples[channel], frame)
            clean = np.ones(count, bool)
            for places in (scan.at_rail, scan.flat):
                if places is not None:
                    clean &= ~np.array([places[start:start + frame.length].any() for start in starts])
            for top in found:
                clean &= (starts > top + 0.05 * frame.rate) | (starts + frame.length <= top - 0.05 * frame.rate)
            rest.append(np.quantile(band[channel][clean], 0.2))
            quiet.append(clean & (band[channel] <= 2 * rest[-1]))
            still = np.flatnonzero(quiet[-1])
            middle, top = (powers[channel][still][:, bins].mean(1).sum() for bins in (frame.middle, frame.top))
            amplitude = np.sqrt(band[channel][still])
            self.add(channel, "all", {
                **{name: column[0] for name, column in spectral_measures(densities[[channel]], np.array([count]), frame).items()},
                **scan.measures(samples[channel], 0, samples.shape[1], frame.rate),
                **drift(levels_of(samples[channel], frame)[0], 0, scan.rails),
                "rest_rms": np.sqrt(rest[-1]), "whiteness": top / middle, "rest_excess": np.sqrt(rest[-1]) / 0.46,
                "band_p95": np.sqrt(np.quantile(band[channel][clean], 0.95)),
                "level_trend": 100 * theil_sen((starts[still] / frame.rate + 0.5) / 60, amplitude) / np.median(amplitude),
                "pops": len(found),
            })
        for a, b in self.pairs:
            cross = np.conj(spectra[a]) * spectra[b] * frame.scale
            self.add_pair(a, b, "all", pair_rows(cross.mean(0), (densities[a], densities[b]), count, frame))
            for name, chosen in states(band, low, quiet, rest, a, b).items():
                if chosen.any():
                    own = [frame.density(powers[channel][chosen].mean(0)) for channel in (a, b)]
                    self.add_pair(a, b, name, pair_rows(cross[chosen].mean(0), own, chosen.sum(), frame))

    def write(self, folder):
        with open(folder + "/measures.tsv", "w") as file:
            file.write("channel\ttrial\tmeasure\tvalue\n")
            file.writelines("%s\t%s\t%s\t%.12g\n" % row for row in self.measures)
        with open(folder + "/pairs.tsv", "w") as file:
            file.write("channel_a\tchannel_b\ttrial\trho\trho_high\tdistance\tcoherence\tgain_ab\tgain_ba\n")
            file.writelines("%s\t%s\t%s\t%.12g\t%.12g\t%.12g\t%.12g\t%.12g\t%.12g\n" % row for row in self.pair_lines)


if __name__ == "__main__":
    Reference(sys.argv[1]).write(sys.argv[2])
