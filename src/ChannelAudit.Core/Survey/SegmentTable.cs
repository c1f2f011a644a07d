using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>One-second segments of a whole channel, with what is known of each; entry i of every list belongs to segment i.</summary>
public sealed class SegmentTable
{
    /// <summary>Timeline index of the first sample.</summary>
    public List<long> Starts { get; } = [];

    /// <summary>Power in the EMG band, unit².</summary>
    public List<double> BandPower { get; } = [];

    /// <summary>Line reading of the single segment.</summary>
    public List<PeakReading> Line { get; } = [];

    /// <summary>Narrow peak of the single segment; power 0 where none stands out.</summary>
    public List<PeakReading> Narrow { get; } = [];

    /// <summary>What the scoring filter leaves in the EMG band, unit².</summary>
    public List<double> BandLeft { get; } = [];

    /// <summary>What it leaves of the line.</summary>
    public List<PeakReading> LineLeft { get; } = [];

    /// <summary>The strongest narrow peak that it leaves; power 0 where none stands out.</summary>
    public List<PeakReading> NarrowLeft { get; } = [];

    /// <summary>Power from 2 to 15 Hz, unit².</summary>
    public List<double> LowPower { get; } = [];

    /// <summary>Power from 2 to 4 Hz, unit²: next to nothing behind a high-pass.</summary>
    public List<double> LowestPower { get; } = [];

    /// <summary>Mean density from 80 to 150 Hz outside line windows, unit²/Hz.</summary>
    public List<double> Middle { get; } = [];

    /// <summary>Mean density of the top fifth of the band outside line windows, unit²/Hz.</summary>
    public List<double> Top { get; } = [];

    /// <summary>Number of segments.</summary>
    public int Count => Starts.Count;
}
