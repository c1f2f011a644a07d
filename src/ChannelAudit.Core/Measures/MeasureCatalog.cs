using System.Collections.Frozen;
using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Measures;

/// <summary>Every measure, in the order in which tables list them.</summary>
public static class MeasureCatalog
{
    /// <summary>Measures of one channel, which appear in <c>measures.tsv</c>.</summary>
    public static ImmutableArray<MeasureDefinition> OfChannels { get; } =
    [
        new("line_rms", "uV", ReasonCode.LineNoise, LimitSense.AtLeast, "mains and its harmonics, root of their power"),
        new("line_ratio", "dB", ReasonCode.LineNoise, LimitSense.AtLeast, "mains power over muscle power"),
        new("line_left", "uV", ReasonCode.LineNoise, LimitSense.AtLeast, "what the scoring filter leaves of the mains"),
        new("line_left_ratio", "dB", ReasonCode.LineNoise, LimitSense.AtLeast, "its power over what the filter leaves of the muscle"),
        new("narrow_rms", "uV", ReasonCode.NarrowBand, LimitSense.AtLeast, "the strongest narrow peak that is not mains"),
        new("narrow_ratio", "dB", ReasonCode.NarrowBand, LimitSense.AtLeast, "its power over muscle power"),
        new("narrow_hz", "Hz", ReasonCode.NarrowBand, LimitSense.AtLeast, "its frequency") { OwnScale = LimitScale.Fixed },
        new("narrow_left", "uV", ReasonCode.NarrowBand, LimitSense.AtLeast, "the strongest narrow peak that the scoring filter leaves"),
        new("narrow_left_ratio", "dB", ReasonCode.NarrowBand, LimitSense.AtLeast, "its power over what the filter leaves of the muscle"),
        new("emg_rms", "uV", string.Empty, LimitSense.AtLeast, "amplitude in the EMG band outside line windows") { OwnScale = LimitScale.Fixed },
        new("clipped", "%", ReasonCode.Clipping, LimitSense.AtLeast, "samples at a rail"),
        new("clipped_run", "ms", ReasonCode.Clipping, LimitSense.AtLeast, "longest run at a rail"),
        new("peak_use", "%", ReasonCode.Clipping, LimitSense.AtLeast, "99.9th percentile of the deflection against the nearer rail") { OwnScale = LimitScale.Size },
        new("flat", "%", ReasonCode.Flatline, LimitSense.AtLeast, "samples in flat stretches"),
        new("flat_run", "ms", ReasonCode.Flatline, LimitSense.AtLeast, "longest flat stretch"),
        new("missing", "%", ReasonCode.Dropout, LimitSense.AtLeast, "samples that are not there"),
        new("gap", "ms", ReasonCode.Dropout, LimitSense.AtLeast, "longest gap"),
        new("drift_slope", "uV/min", ReasonCode.Drift, LimitSense.AtLeastMagnitude, "slope of the baseline"),
        new("drift_range", "uV", ReasonCode.Drift, LimitSense.AtLeast, "range of the baseline, 5th to 95th percentile"),
        new("headroom", "%", ReasonCode.Drift, LimitSense.AtMost, "room left to the nearer rail at the worst level") { OwnScale = LimitScale.Room },
        new("level_trend", "%/min", ReasonCode.RestingLevel, LimitSense.AtLeastMagnitude, "trend of the resting level, whole recording only"),
        new("lowfreq_rms", "uV", ReasonCode.LowFrequency, LimitSense.AtLeast, "amplitude from 2 to 15 Hz, below the EMG band"),
        new("lowfreq_ratio", "1", ReasonCode.LowFrequency, LimitSense.AtLeast, "power from 2 to 15 Hz over muscle power") { OwnScale = LimitScale.Power },
        new("lowfreq_left", "uV", ReasonCode.LowFrequency, LimitSense.AtLeast, "what the scoring filter leaves from 2 to 15 Hz"),
        new("lowfreq_left_ratio", "1", ReasonCode.LowFrequency, LimitSense.AtLeast, "its power over what the filter leaves of the muscle") { OwnScale = LimitScale.Power },
        new("pops", "1", ReasonCode.Pops, LimitSense.AtLeast, "short, isolated spikes"),
        new("pop_rate", "1/min", ReasonCode.Pops, LimitSense.AtLeast, "spikes a minute"),
        new("pop_share", "%", ReasonCode.Pops, LimitSense.AtLeast, "what spikes hold of the energy above 20 Hz, trials only") { IsOfTrials = true },
        new("rest_rms", "uV", ReasonCode.NoiseFloor, LimitSense.AtLeast, "amplitude in the band at rest; in a trial the trial's own"),
        new("whiteness", "1", ReasonCode.NoiseFloor, LimitSense.AtLeast, "density at the top of the band over that at 80 to 150 Hz")
        { AlsoServes = ReasonCode.WeakResponse, OwnScale = LimitScale.Fixed },
        new("contraction_snr", "dB", ReasonCode.WeakResponse, LimitSense.AtMost, "contraction over rest; trials of a task only, the best of them for the whole recording"),
        new("rest_excess", "1", ReasonCode.WeakResponse, LimitSense.AtMost, "amplitude at rest over the amplifier's own noise, whole recording only") { OwnScale = LimitScale.AboveNoise },
        new("band_p95", "uV", ReasonCode.WeakResponse, LimitSense.AtMost, "95th percentile of the amplitude in the band of single seconds, whole recording only"),
        new("rectified", "uV", string.Empty, LimitSense.AtLeast, "mean rectified amplitude behind the scoring filter, trials only") { IsOfTrials = true, OwnScale = LimitScale.Fixed },
        new("line_effect", "%", ReasonCode.LineNoise, LimitSense.AtLeastMagnitude, "what the mains adds to it, in % of it without the mains") { OwnScale = LimitScale.Size },
        new("line_shift", "uV", ReasonCode.LineNoise, LimitSense.AtLeastMagnitude, "the same in µV") { IsOfTrials = true },
        new("narrow_effect", "%", ReasonCode.NarrowBand, LimitSense.AtLeastMagnitude, "what the narrow peak adds to it") { OwnScale = LimitScale.Size },
        new("narrow_shift", "uV", ReasonCode.NarrowBand, LimitSense.AtLeastMagnitude, "the same in µV") { IsOfTrials = true },
        new("lowfreq_effect", "%", ReasonCode.LowFrequency, LimitSense.AtLeastMagnitude, "what is left from 2 to 15 Hz adds to it") { OwnScale = LimitScale.Size },
        new("lowfreq_shift", "uV", ReasonCode.LowFrequency, LimitSense.AtLeastMagnitude, "the same in µV") { IsOfTrials = true },
        new("noise_effect", "%", ReasonCode.NoiseFloor, LimitSense.AtLeastMagnitude, "what white noise adds to it, an estimate") { OwnScale = LimitScale.Size },
        new("noise_shift", "uV", ReasonCode.NoiseFloor, LimitSense.AtLeastMagnitude, "the same in µV") { IsOfTrials = true },
        new("pops_effect", "%", ReasonCode.Pops, LimitSense.AtLeastMagnitude, "what spikes add to it") { OwnScale = LimitScale.Size },
        new("pops_shift", "uV", ReasonCode.Pops, LimitSense.AtLeastMagnitude, "the same in µV") { IsOfTrials = true },
        new("clipped_effect", "%", ReasonCode.Clipping, LimitSense.AtLeastMagnitude, "what clipping takes from it at least, below zero"),
        new("clipped_shift", "uV", ReasonCode.Clipping, LimitSense.AtLeastMagnitude, "the same in µV, below zero") { IsOfTrials = true },
        new("flat_effect", "%", ReasonCode.Flatline, LimitSense.AtLeastMagnitude, "what flat stretches take from it, below zero"),
        new("flat_shift", "uV", ReasonCode.Flatline, LimitSense.AtLeastMagnitude, "the same in µV, below zero") { IsOfTrials = true },
    ];

    /// <summary>Those that a whole recording can have, which are columns of <c>channels.tsv</c>.</summary>
    public static ImmutableArray<MeasureDefinition> OfWholeRecordings { get; } = [.. OfChannels.Where(measure => !measure.IsOfTrials)];

    /// <summary>Numbers that only criteria know: medians that decide a bridge, and the share of bad trials.</summary>
    public static ImmutableArray<MeasureDefinition> OfDecisions { get; } =
    [
        new("rho_rest", "1", ReasonCode.Bridge, LimitSense.AtLeastMagnitude, "median correlation at rest, 30 to 250 Hz") { OwnScale = LimitScale.Correlation },
        new("rho_high_rest", "1", ReasonCode.Bridge, LimitSense.AtLeastMagnitude, "median correlation at rest, 300 to 450 Hz") { OwnScale = LimitScale.Correlation },
        new("rho_active", "1", ReasonCode.Bridge, LimitSense.AtLeastMagnitude, "the weaker of the median correlations in contractions of either") { OwnScale = LimitScale.Correlation },
        new("gain_active", "1", ReasonCode.Bridge, LimitSense.AtLeastMagnitude, "the weaker of the reciprocal gains in contractions") { OwnScale = LimitScale.Gain },
        new("swap_own", "dB", ReasonCode.LeadSwap, LimitSense.AtMost, "median answer of the asked site to its task"),
        new("swap_other", "dB", ReasonCode.LeadSwap, LimitSense.AtLeast, "median answer of the other site to that task"),
        new("swap_lead", "dB", ReasonCode.LeadSwap, LimitSense.AtLeast, "how much more the other site answers than the asked one; counts both ways round only"),
        new("bad_share", "%", "bad-trials", LimitSense.AtLeast, "share of trials that are rejected"),
        new("bad_share_low", "%", "bad-trials", LimitSense.AtLeast, "lower end of the share's 95 % Wilson interval"),
    ];

    private static readonly FrozenDictionary<string, MeasureDefinition> ByName =
        OfChannels.Concat(OfDecisions).ToFrozenDictionary(measure => measure.Name, StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, int> Places =
        OfChannels.Select((measure, place) => (measure.Name, place)).ToFrozenDictionary(one => one.Name, one => one.place, StringComparer.Ordinal);

    /// <summary>The place of a measure in <see cref="OfChannels"/>; null for any other name.</summary>
    public static int? PlaceOf(string name) => Places.TryGetValue(name, out int place) ? place : null;

    /// <summary>The definition of a measure.</summary>
    /// <exception cref="KeyNotFoundException">When there is no measure of that name.</exception>
    public static MeasureDefinition Get(string name) => ByName[name];

    /// <summary>Whether there is a measure of that name.</summary>
    public static bool Contains(string name) => ByName.ContainsKey(name);
}
