using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>One-second segments of a whole channel, with what is known of each; entry i of every list belongs to segment i.</summary>
public sealed class SegmentTable
{
    /// <summary>Starts an empty table.</summary>
    /// <param name="starts">The starts, which tables of one group share: one of them adds to it.</param>
    /// <param name="spill">Takes what of a long recording does not stay in memory.</param>
    public SegmentTable(List<long>? starts = null, Spill? spill = null)
    {
        spill ??= new Spill();
        Starts = starts ?? [];
        (BandPower, BandLeft, LowPower, LowestPower, Middle, Top) = (new(spill), new(spill), new(spill), new(spill), new(spill), new(spill));
        (Line, Narrow, LineLeft, NarrowLeft) = (new(spill), new(spill), new(spill), new(spill));
    }

    /// <summary>Timeline index of the first sample.</summary>
    public List<long> Starts { get; }

    /// <summary>Power in the EMG band, unit².</summary>
    public Column<double> BandPower { get; }

    /// <summary>Line reading of the single segment.</summary>
    public Column<PeakReading> Line { get; }

    /// <summary>Narrow peak of the single segment; power 0 where none stands out.</summary>
    public Column<PeakReading> Narrow { get; }

    /// <summary>What the scoring filter leaves in the EMG band, unit².</summary>
    public Column<double> BandLeft { get; }

    /// <summary>What it leaves of the line.</summary>
    public Column<PeakReading> LineLeft { get; }

    /// <summary>The strongest narrow peak that it leaves; power 0 where none stands out.</summary>
    public Column<PeakReading> NarrowLeft { get; }

    /// <summary>Power from 2 to 15 Hz, unit².</summary>
    public Column<double> LowPower { get; }

    /// <summary>Power from 2 to 4 Hz, unit²: next to nothing behind a high-pass.</summary>
    public Column<double> LowestPower { get; }

    /// <summary>Mean density from 80 to 150 Hz outside line windows, unit²/Hz.</summary>
    public Column<double> Middle { get; }

    /// <summary>Mean density of the top fifth of the band outside line windows, unit²/Hz.</summary>
    public Column<double> Top { get; }

    /// <summary>Number of segments.</summary>
    public int Count => BandPower.Count;
}
