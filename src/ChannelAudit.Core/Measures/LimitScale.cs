namespace ChannelAudit.Measures;

/// <summary>What it means that a limit tolerates twice as much fault.</summary>
public enum LimitScale
{
    /// <summary>Twice the number: µV, slopes, rates, counts, times.</summary>
    Size,

    /// <summary>Twice the number, at most 100: shares in %.</summary>
    Share,

    /// <summary>A ratio of amplitudes in dB: 6 dB.</summary>
    Decibels,

    /// <summary>A plain ratio of powers: four times the number, since an amplitude doubles.</summary>
    Power,

    /// <summary>Room in %: half as much room left for what is used.</summary>
    Room,

    /// <summary>A multiple of the amplifier's own noise: half as much left above it, powers added.</summary>
    AboveNoise,

    /// <summary>A correlation: the signal that both share twice as large against what each has alone.</summary>
    Correlation,

    /// <summary>A gain between sites: a joint that conducts twice as well.</summary>
    Gain,

    /// <summary>Says what something is, not how much of it there is: the limit stays.</summary>
    Fixed,
}
