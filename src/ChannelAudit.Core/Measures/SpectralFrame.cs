using System.Collections.Immutable;
using ChannelAudit.Recordings;

namespace ChannelAudit.Measures;

/// <summary>What every spectral measure of one channel needs: segment length, band, and the windows of the mains harmonics.</summary>
public sealed class SpectralFrame
{
    // Less than a millionth of the band's power: 60 dB down on average.
    private const double NothingOfBand = 1e-6;

    private PairBands? pairBands;

    private SpectralFrame(Channel channel, double nominalHz, double lineHz, ImmutableArray<int> notched, ScoringFilter filter)
    {
        RateHz = channel.Rate.Value;
        SegmentLength = SegmentLengthOf(channel.Rate);
        Hop = SegmentLength - (SegmentLength / 2);
        BinHz = RateHz / SegmentLength;
        Bins = (SegmentLength / 2) + 1;
        Band = EmgBand.Of(channel);
        Filter = filter;
        Passes = filter.PowerAtBins(Bins, BinHz, RateHz, true);
        FirstBin = Band.FirstBin(BinHz);
        LastBin = Math.Min(Band.LastBin(BinHz), Bins - 1);
        LineHz = lineHz;
        NominalHz = nominalHz;
        IsLine = new bool[Bins];
        ImmutableArray<LineWindow>.Builder counted = ImmutableArray.CreateBuilder<LineWindow>();
        for (int harmonic = 1; harmonic * lineHz < (RateHz / 2) + 2; harmonic++)
        {
            int center = (int)Math.Round(harmonic * lineHz / BinHz, MidpointRounding.AwayFromZero);
            for (int bin = Math.Max(0, center - LineWindow.Reach); bin <= Math.Min(Bins - 1, center + LineWindow.Reach); bin++)
            {
                IsLine[bin] = true;
            }

            if ((harmonic * nominalHz) + 2 <= Band.ToHz && !notched.Contains(harmonic))
            {
                counted.Add(new LineWindow(harmonic, center));
            }
        }

        Harmonics = counted.DrainToImmutable();
        Notched = notched;
        OpenRanges = BinRange.Where(FirstBin, LastBin, bin => !IsLine[bin]);
        OpenBins = OpenRanges.Sum(range => range.Count);
        TopRanges = BinRange.Where(BinFrom(Whiteness.TopShare * Band.ToHz), LastBin, bin => !IsLine[bin]);
        MiddleRanges = BinRange.Where(BinFrom(Whiteness.MiddleFromHz), Math.Min(BinTo(Whiteness.MiddleToHz), LastBin), bin => !IsLine[bin]);
        LowBins = new BinRange(BinFrom(LowFrequency.FromHz), BinTo(LowFrequency.ToHz));
        LowestBins = new BinRange(BinFrom(LowFrequency.FromHz), BinTo(LowFrequency.LowestToHz));
        LeavesBand = OpenRanges.Sum(range => Passes.Skip(range.From).Take(range.Count).Sum()) > NothingOfBand * OpenBins;
        NarrowCenters = BinRange.Where(
            FirstBin + LineWindow.Reach,
            LastBin - LineWindow.Reach,
            bin => !IsLine[bin]);
    }

    /// <summary>Samples per second.</summary>
    public double RateHz { get; }

    /// <summary>Samples in a segment of one second, rounded to nearest.</summary>
    public int SegmentLength { get; }

    /// <summary>Samples from one segment's start to the next: half a segment.</summary>
    public int Hop { get; }

    /// <summary>Width of a bin in Hz.</summary>
    public double BinHz { get; }

    /// <summary>Bins of a one-sided spectrum.</summary>
    public int Bins { get; }

    /// <summary>The EMG band.</summary>
    public EmgBand Band { get; }

    /// <summary>First bin of the band.</summary>
    public int FirstBin { get; }

    /// <summary>Last bin of the band.</summary>
    public int LastBin { get; }

    /// <summary>The mains frequency as measured.</summary>
    public double LineHz { get; }

    /// <summary>The mains frequency as named: decides which harmonics count.</summary>
    public double NominalHz { get; }

    /// <summary>The harmonics that are summed: h x nominal + 2 Hz inside the band, and not behind a notch.</summary>
    public ImmutableArray<LineWindow> Harmonics { get; }

    /// <summary>Harmonics that a notch filter has removed.</summary>
    public ImmutableArray<int> Notched { get; }

    /// <summary>For every bin whether it belongs to a window of any harmonic, counted or not.</summary>
    public bool[] IsLine { get; }

    /// <summary>Bins of the band outside all line windows.</summary>
    public int OpenBins { get; }

    /// <summary>The same bins as ranges.</summary>
    public ImmutableArray<BinRange> OpenRanges { get; }

    /// <summary>Bins of the top fifth of the band outside all line windows.</summary>
    public ImmutableArray<BinRange> TopRanges { get; }

    /// <summary>Bins from 80 to 150 Hz outside all line windows.</summary>
    public ImmutableArray<BinRange> MiddleRanges { get; }

    /// <summary>Bins from 2 to 15 Hz.</summary>
    public BinRange LowBins { get; }

    /// <summary>Bins from 2 to 4 Hz.</summary>
    public BinRange LowestBins { get; }

    /// <summary>Where a narrow peak may stand: bins of the band outside all line windows, whatever its own window touches.</summary>
    public ImmutableArray<BinRange> NarrowCenters { get; }

    /// <summary>The filter that scoring puts before the rectifier.</summary>
    public ScoringFilter Filter { get; }

    /// <summary>For every bin the share of power that the filter lets through.</summary>
    public double[] Passes { get; }

    /// <summary>Whether the filter leaves anything of the band.</summary>
    public bool LeavesBand { get; }

    /// <summary>The bands in which the channel can be compared with another that reaches as high.</summary>
    public PairBands PairBands => pairBands ??= PairBands.Of(this, this);

    /// <summary>The frame of a channel.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="nominalHz">50 or 60, or the setup's.</param>
    /// <param name="lineHz">The measured frequency.</param>
    /// <param name="notched">Harmonic numbers behind a notch.</param>
    /// <param name="filter">The filter of scoring; null: the ordinary one.</param>
    public static SpectralFrame Of(
        Channel channel, double nominalHz, double lineHz, ImmutableArray<int> notched, ScoringFilter? filter = null) =>
        new(channel, nominalHz, lineHz, notched, filter ?? ScoringFilter.Ordinary);

    /// <summary>Samples in a segment of one second at a rate.</summary>
    public static int SegmentLengthOf(Rational rate) => (int)Math.Max(2, Math.Round(rate.Value, MidpointRounding.AwayFromZero));

    private int BinFrom(double hz) => Math.Min(Bins, (int)Math.Ceiling((hz / BinHz) - 1e-9));

    private int BinTo(double hz) => Math.Min(Bins - 1, (int)Math.Floor((hz / BinHz) + 1e-9));
}
