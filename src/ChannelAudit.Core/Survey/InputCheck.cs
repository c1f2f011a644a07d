using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Statistics;
using MathNet.Numerics.Statistics;

namespace ChannelAudit.Survey;

/// <summary>Whether the samples of a channel are a raw signal in a unit that can be believed; looked at before anything is measured.</summary>
/// <remarks>
/// Rectified: no sample beyond zero on one side, and nine of ten seconds come down to a twentieth of their peak. A raw signal with an electrode
/// offset lies on one side too, but never comes near zero every second. Smoothed (an envelope, an integral): on one side of zero, slow waves as large as the
/// level, and 20 dB and more between them and what is left above 20 Hz, which falls off as steeply.
/// Unit: contacts of 5 kOhm alone make 0.27 uV over 430 Hz (thermal noise, 4kTRB), amplifiers as much again, and no face more than some thousands. Where
/// every channel lies outside 0.2 to 5000, taken over the full band, the unit is wrong (mV or V called uV, raw codes); where one does and others do not, that channel is odd, not the unit. The typical density is used, so that
/// mains on an open lead is not taken for a wrong unit; below the rounding of the file it is no amplitude at all (test signals, dead inputs). All numbers: engineering judgement (docs/measures/unusable-input.md).
/// </remarks>
internal static class InputCheck
{
    private const int LeastSeconds = 2;
    private const double NearZero = 0.05;
    private const double MostOfSeconds = 0.9;
    private const double MostAtZero = 0.2;
    private const double SmoothTimes = 100;
    private const double SteepTimes = 30;
    private const double OffsetTimes = 20;
    private const int LeastCompared = 8;
    private const double LeastSpread = 0.2;
    private const double LevelWithSwing = 0.5;
    private const double Skewed = 1.1;
    private const string Rectified = "the signal is rectified";
    private const string Smoothed = "the signal is smoothed: an envelope or an integral";
    private const double FullBandHz = EmgBand.HighestHz - EmgBand.LowestHz;
    private const double LeastUv = 0.2;
    private const double MostUv = 5000;

    /// <summary>The channels with what was found about their input.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channels">The channels.</param>
    /// <param name="samples">Their sampled seconds, in the same order.</param>
    public static ImmutableArray<Channel> Of(Recording recording, ImmutableArray<Channel> channels, ImmutableArray<SpectrumSample> samples)
    {
        ImmutableArray<Channel> raw = [.. channels.Zip(samples, Checked)];
        double?[] amplitudes = [.. raw.Zip(samples, (channel, sample) => channel.IsMicrovolts && channel.NotRaw is null ? AmplitudeUv(recording, channel, sample) : null)];
        bool anyPlausible = amplitudes.Any(amplitude => amplitude is >= LeastUv and <= MostUv);
        return anyPlausible ? raw : [.. raw.Zip(amplitudes, (channel, amplitude) => amplitude > channel.Step / Math.Sqrt(12) ? WithDoubt(channel, amplitude.Value) : channel)];
    }

    private static Channel Checked(Channel channel, SpectrumSample sample)
    {
        string? notRaw = NotRaw(channel, sample);
        return channel with { NotRaw = notRaw, IsSmoothed = string.Equals(notRaw, Smoothed, StringComparison.Ordinal) };
    }

    private static Channel WithDoubt(Channel channel, double amplitudeUv) => channel with
    {
        IsMicrovolts = false,
        UnitDoubt = string.Create(
            CultureInfo.InvariantCulture,
            $"the unit looks wrong: an amplitude of {amplitudeUv:0.###e+0} \u00B5V is {(amplitudeUv < LeastUv ? "less than electrodes and amplifier make" : "more than a muscle makes")}"),
    };

    private static string? NotRaw(Channel channel, SpectrumSample sample)
    {
        SampledSecond[] moving = [.. sample.Seconds.Where(second => second.Moves)];
        if (moving.Length < LeastSeconds || 2 * moving.Length < sample.Seconds.Count)
        {
            return null;
        }

        // Turned round, so that both sides read alike.
        SampledSecond[] sided = moving.All(second => second.Greatest <= channel.Step)
            ? [.. moving.Select(second => second.Turned())]
            : moving;
        if (!sided.All(second => second.Least >= -channel.Step))
        {
            return null;
        }

        // A raw signal cut off at zero piles up there; a rectified one only touches it.
        bool isCut = sided.Count(second => second.AtExtreme > MostAtZero) >= 0.5 * sided.Length;
        return !isCut && sided.Count(second => second.Least <= NearZero * second.Greatest) >= MostOfSeconds * sided.Length ? Rectified
            : IsSmooth(channel, sample, sided) || FollowsItself(sided) ? Smoothed
            : null;
    }

    // The level of an envelope goes with its swing, both are the muscle's amplitude, and it reaches further up than down. A raw signal, wherever its
    // offset lies, does neither.
    private static bool FollowsItself(SampledSecond[] seconds)
    {
        if (seconds.Count(second => second.Greatest - second.Mean >= Skewed * (second.Mean - second.Least)) < seconds.Length / 2.0)
        {
            return false;
        }

        double[] levels = [.. seconds.Where(second => second.Mean > 0).Select(second => Math.Log(second.Mean))];
        double[] swings = [.. seconds.Where(second => second.Mean > 0).Select(second => Math.Log(second.Greatest - second.Least))];
        if (levels.Length < LeastCompared || Moments.StandardDeviation(levels) < LeastSpread)
        {
            return false;
        }

        return Correlation.Pearson(levels, swings) >= LevelWithSwing;
    }

    private static bool IsSmooth(Channel channel, SpectrumSample sample, SampledSecond[] seconds)
    {
        double meanLevel = seconds.Average(second => second.Mean);
        double slow = seconds.Average(second => (second.Mean - meanLevel) * (second.Mean - meanLevel)) + (13 * (sample.TypicalDensity(2, 15) ?? 0));
        double? fast = sample.TypicalDensity(EmgBand.LowestHz, 2 * EmgBand.LowestHz);
        double? faster = sample.TypicalDensity(100, 200);
        if (fast is not { } near || faster is not { } far || meanLevel > OffsetTimes * Math.Sqrt(slow))
        {
            return false;
        }

        // Rounding to the step spreads its noise evenly; nothing falls below it.
        double rounding = channel.Step * channel.Step / 6 / channel.Rate.Value;
        double band = EmgBand.Of(channel).ToHz - EmgBand.LowestHz;
        return slow >= SmoothTimes * far * band && (near >= SteepTimes * far || far <= 4 * rounding);
    }

    private static double? AmplitudeUv(Recording recording, Channel channel, SpectrumSample sample)
    {
        EmgBand band = EmgBand.Of(channel);
        return sample.Seconds.Count == 0 ? Deviation(recording, channel)
            : band.IsUsable && sample.TypicalDensity(band.FromHz, band.ToHz) is { } density ? Math.Sqrt(density * FullBandHz)
            : null;
    }

    // Of less than a second there is no spectrum: all that moves counts, which is more.
    private static double? Deviation(Recording recording, Channel channel)
    {
        if (channel.Stretches.IsEmpty)
        {
            return null;
        }

        Stretch longest = channel.Stretches.MaxBy(stretch => stretch.Length);
        double[] samples = new double[longest.Length];
        recording.Samples.Read(channel.Index, longest.StoredStart, samples);
        double mean = samples.Average();
        return Math.Sqrt(samples.Average(sample => (sample - mean) * (sample - mean)));
    }
}
