using System.Collections.Immutable;

namespace ChannelAudit.Measures;

/// <summary>The bins in which two channels are compared: 30 to 250 Hz and, where band and rate allow, 300 to 450 Hz; line windows left out.</summary>
public sealed class PairBands
{
    /// <summary>Lower edge of the main band.</summary>
    public const double LowFromHz = 30;

    /// <summary>Upper edge of the main band.</summary>
    public const double LowToHz = 250;

    /// <summary>Lower edge of the high band.</summary>
    public const double HighFromHz = 300;

    /// <summary>Upper edge of the high band.</summary>
    public const double HighToHz = 450;

    /// <summary>
    /// The least upper edge with which it still counts: a low-pass at 450 Hz leaves it up to 405. Both channels lose alike, so the correlation stays
    /// what it was.
    /// </summary>
    public const double LeastHighToHz = 400;

    private PairBands(double binHz, ImmutableArray<BinRange> low, ImmutableArray<BinRange> high, int firstBin, int lastBin)
    {
        BinHz = binHz;
        Low = low;
        High = high;
        FirstBin = firstBin;
        BinCount = Math.Max(0, lastBin - firstBin + 1);
    }

    /// <summary>Width of a bin in Hz.</summary>
    public double BinHz { get; }

    /// <summary>Open bins of the main band; empty when the rate is too low for it.</summary>
    public ImmutableArray<BinRange> Low { get; }

    /// <summary>Open bins of the high band; empty when low-pass or rate cut it off.</summary>
    public ImmutableArray<BinRange> High { get; }

    /// <summary>The first bin of either band.</summary>
    public int FirstBin { get; }

    /// <summary>Bins from the first of the main band to the last of the high band.</summary>
    public int BinCount { get; }

    /// <summary>Whether the main band is there.</summary>
    public bool HasLow => !Low.IsEmpty;

    /// <summary>Whether the high band is there.</summary>
    public bool HasHigh => !High.IsEmpty;

    /// <summary>Width of the high band in Hz, line windows left out.</summary>
    public double HighWidthHz => High.Sum(range => range.Count) * BinHz;

    /// <summary>The bands of two channels of one rate.</summary>
    public static PairBands Of(SpectralFrame a, SpectralFrame b)
    {
        double top = Math.Min(a.Band.ToHz, b.Band.ToHz);
        ImmutableArray<BinRange> low = top >= LowToHz ? Open(a, LowFromHz, LowToHz) : [];
        ImmutableArray<BinRange> high = top >= LeastHighToHz ? Open(a, HighFromHz, Math.Min(HighToHz, top)) : [];
        int first = low.IsEmpty ? 0 : low[0].From;
        int last = high.IsEmpty ? low.IsEmpty ? -1 : low[^1].To : high[^1].To;
        return new PairBands(a.BinHz, low, high, first, last);
    }

    private static ImmutableArray<BinRange> Open(SpectralFrame frame, double fromHz, double toHz) => BinRange.Where(
        (int)Math.Ceiling((fromHz / frame.BinHz) - 1e-9),
        Math.Min(frame.Bins - 1, (int)Math.Floor((toHz / frame.BinHz) + 1e-9)),
        bin => !frame.IsLine[bin]);
}
