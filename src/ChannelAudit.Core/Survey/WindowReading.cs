using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Segments;

namespace ChannelAudit.Survey;

/// <summary>Everything measured in one window of one channel; no limits.</summary>
public sealed record WindowReading
{
    private readonly double[] density = [];

    /// <summary>The window.</summary>
    public required Window Window { get; init; }

    /// <summary>Samples per second.</summary>
    public required double RateHz { get; init; }

    /// <summary>Rails and range.</summary>
    public required TimeScan Time { get; init; }

    /// <summary>Samples in flat stretches.</summary>
    public required long FlatSamples { get; init; }

    /// <summary>Longest flat stretch inside the window, in samples.</summary>
    public required long FlatRun { get; init; }

    /// <summary>Longest stretch of missing samples.</summary>
    public required long Gap { get; init; }

    /// <summary>Overlapping one-second segments; 0 when the least-squares fit was used or nothing spectral was said.</summary>
    public required int Segments { get; init; }

    /// <summary>Line reading, or null.</summary>
    public PeakReading? Line { get; init; }

    /// <summary>Narrow peak, or null.</summary>
    public PeakReading? Narrow { get; init; }

    /// <summary>Muscle power in the band, or null.</summary>
    public double? EmgPower { get; init; }

    /// <summary>Power from 2 to 15 Hz, or null.</summary>
    public double? LowPower { get; init; }

    /// <summary>What the scoring filter leaves, or null when nothing spectral was said.</summary>
    public Surviving? Left { get; init; }

    /// <summary>Mean rectified amplitude; trials only.</summary>
    public RectifiedScan Rectified { get; init; }

    /// <summary>Power of rest in the band, unit²: for the whole recording that of its quiet seconds, for a trial the trial's own.</summary>
    public double? RestPower { get; init; }

    /// <summary>Whiteness; for the whole recording that of its quiet seconds; null where the band is too narrow.</summary>
    public double? Whiteness { get; init; }

    /// <summary>The most that noise can contribute: as if the top of the band were noise alone, unit²; or null.</summary>
    public double? NoisePower { get; init; }

    /// <summary>What each one-second segment holds, in order; empty for the whole recording and for short windows.</summary>
    public ImmutableArray<SegmentPower> SegmentPowers { get; init; } = [];

    /// <summary>The mean density, or empty; of a trial read back each time it is asked for.</summary>
    public double[] Density
    {
        get => Kept?.Read() ?? density;
        init => density = value;
    }

    /// <summary>Whether there is a mean density.</summary>
    public bool HasDensity => Kept is not null || density.Length > 0;

    /// <summary>Where the density of a trial waits; null where it is at hand.</summary>
    public KeptDensity? Kept { get; init; }

    /// <summary>Why nothing spectral was said, or null.</summary>
    public string? NoSpectrum { get; init; }

    /// <summary>Slope, range and headroom of the baseline, or null below two levels.</summary>
    public Drift? Drift { get; init; }

    /// <summary>Pops.</summary>
    public PopCount Pops { get; init; }

    /// <summary>Trend of the resting level in % a minute; whole recording only.</summary>
    public double? LevelTrend { get; init; }

    /// <summary>Amplitude at rest over the amplifier's own noise; whole recording only, null where it says nothing.</summary>
    public double? RestExcess { get; init; }

    /// <summary>95th percentile of the power in the band of its clean seconds, unit²; whole recording only.</summary>
    public double? LoudPower { get; init; }

    /// <summary>Share of the window that is stored.</summary>
    public double StoredShare => Window.Length > 0 ? (double)Window.Stored / Window.Length : 0;

    /// <summary>Start of the window in seconds.</summary>
    public double FromS => Window.Start / RateHz;

    /// <summary>End of the window in seconds.</summary>
    public double ToS => Window.End / RateHz;
}
