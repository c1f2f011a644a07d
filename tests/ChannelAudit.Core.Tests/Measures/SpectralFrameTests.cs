using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Setup;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Which bins of a spectrum are asked what, worked out by hand from the limits of the pages in docs/measures, and what the measures make of densities in whole numbers there.</summary>
public sealed class SpectralFrameTests
{
    [Theory]
    [InlineData(1000, 1000, 500, 501, 20, 450, 15, 4)]
    [InlineData(1000.4, 1000, 500, 501, 20, 449, 14, 3)]
    [InlineData(999.6, 1000, 500, 501, 21, 450, 15, 4)]
    [InlineData(497.4, 497, 249, 249, 20, 223, 14, 3)]
    [InlineData(200, 200, 100, 101, 20, 90, 15, 4)]
    [InlineData(1.2, 2, 1, 2, 34, 0, 1, 1)]
    public void SegmentsAndBinsFollowFromTheRate(double rateHz, int length, int hop, int bins, int first, int last, int lowTo, int lowestTo)
    {
        SpectralFrame frame = Made.Frame(rateHz);

        Assert.Equal((length, hop, bins), (frame.SegmentLength, frame.Hop, frame.Bins));
        Assert.Equal(rateHz / length, frame.BinHz, 12);
        Assert.Equal((first, last), (frame.FirstBin, frame.LastBin));
        Assert.Equal((lowTo, lowestTo), (frame.LowBins.To, frame.LowestBins.To));
        Assert.Equal(rateHz > 998 && rateHz < 1000 ? 3 : 2, frame.LowBins.From);
        Assert.Equal(frame.LowBins.From, frame.LowestBins.From);
        Assert.Equal(bins, frame.Passes.Length);
    }

    // Five bins around each harmonic, and the last that begins within 2 Hz of half the rate.
    [Theory]
    [InlineData(1000, 60, "58-62 118-122 178-182 238-242 298-302 358-362 418-422 478-482")]
    [InlineData(300, 49.83, "48-52 98-102 147-150")]
    [InlineData(98, 50, "48-49")]
    [InlineData(96, 50, "")]
    public void WindowsOfTheMainsAreFiveBins(double rateHz, double lineHz, string windows)
    {
        SpectralFrame frame = Made.Frame(rateHz, lineHz, Math.Round(lineHz));

        Assert.Equal(windows, Made.Text(BinRange.Where(0, frame.Bins - 1, bin => frame.IsLine[bin])));
    }

    // 56 Hz times 8 and 2 more is the top of the band; a harmonic behind a notch is not summed, but no muscle either.
    [Fact]
    public void HarmonicsInsideTheBandAreSummed()
    {
        Assert.Equal<int>([1, 2, 3, 4, 5, 6, 7, 8], Made.Frame(1000, 56, 56).Harmonics.Select(window => window.Harmonic));
        Assert.Equal<int>([1, 2, 3, 4, 5, 6, 7], Made.Frame(1000, 56.01, 56.01).Harmonics.Select(window => window.Harmonic));
        SpectralFrame notched = SpectralFrame.Of(Made.Channel(1000), 50, 49.9, [2, 4]);

        Assert.Equal<int>([1, 3, 5, 6, 7, 8], notched.Harmonics.Select(window => window.Harmonic));
        Assert.Equal<int>([50, 150, 250, 299, 349, 399], notched.Harmonics.Select(window => window.Center));
        Assert.Equal<int>([2, 4], notched.Notched);
        Assert.True(notched.IsLine[100]);
        Assert.Equal((49.9, 50), (notched.LineHz, notched.NominalHz));
    }

    [Fact]
    public void MuscleIsSoughtOutsideTheWindows()
    {
        SpectralFrame frame = Made.Frame(1000, 60, 60);

        Assert.Equal("20-57 63-117 123-177 183-237 243-297 303-357 363-417 423-450", Made.Text(frame.OpenRanges));
        Assert.Equal(431 - 35, frame.OpenBins);
        Assert.Equal("363-417 423-450", Made.Text(frame.TopRanges));
        Assert.Equal("80-117 123-150", Made.Text(frame.MiddleRanges));
        Assert.Equal("22-57 63-117 123-177 183-237 243-297 303-357 363-417 423-448", Made.Text(frame.NarrowCenters));
    }

    [Fact]
    public void ANarrowBandEndsThem()
    {
        SpectralFrame frame = Made.Frame(200, 50, 50);

        Assert.Equal("20-47 53-90", Made.Text(frame.OpenRanges));
        Assert.Equal("72-90", Made.Text(frame.TopRanges));
        Assert.Equal("80-90", Made.Text(frame.MiddleRanges));
    }

    [Theory]
    [InlineData(20.0, null, true)]
    [InlineData(null, 1.0, false)]
    [InlineData(null, 3.0, true)]
    public void AFilterMayLeaveNothingOfTheBand(double? highpassHz, double? lowpassHz, bool leaves) =>
        Assert.Equal(leaves, Frame(1000, new ScoringSetup { HighpassHz = highpassHz, LowpassHz = lowpassHz }).LeavesBand);

    // 430 bins of 1.0004 Hz, whatever windows of the mains leave out.
    [Fact]
    public void AFlatDensityHasThePowerOfTheWholeBand()
    {
        SpectralFrame frame = Made.Frame(1000.4);
        double[] flat = [.. Enumerable.Repeat(2.0, frame.Bins)];
        double[] half = [.. Enumerable.Repeat(0.5, frame.Bins)];

        Assert.Equal(2 * 430 * 1.0004, BandAmplitude.Power(flat, frame)!.Value, 9);
        Assert.Equal(430 * 1.0004, BandAmplitude.Power(flat, frame, half)!.Value, 9);
        Assert.Equal(26.0 * 1.0004, LowFrequency.Power(flat, frame), 9);
        Assert.Null(BandAmplitude.Power(flat, Made.Frame(1000.4, 5, 5)));
    }

    [Fact]
    public void ItsFirstAndItsLastBinCount()
    {
        SpectralFrame frame = Made.Frame(1000);
        double[] ends = new double[frame.Bins];
        (ends[1], ends[2], ends[15], ends[16]) = (1000, 3, 4, 1000);
        (ends[19], ends[20], ends[447], ends[451]) = (1000, 1, 2, 1000);

        Assert.Equal(3 * 431 / (431 - 40 - 3.0), BandAmplitude.Power(ends, frame)!.Value, 9);
        Assert.Equal(7, LowFrequency.Power(ends, frame), 9);
    }

    [Fact]
    public void WhitenessIsTheTopOverTheMiddle()
    {
        SpectralFrame frame = Made.Frame(1000, 60, 60);
        double[] density = new double[frame.Bins];
        (density[363], density[450], density[80], density[150]) = (41.5, 41.5, 30, 36);

        // 83 bins at the top, 66 in the middle.
        Assert.Equal(1, Whiteness.Of(density, frame)!.Value, 12);
        Assert.Equal(2.5, Whiteness.Of(5, 2, new EmgBand(20, 300)));
        Assert.Null(Whiteness.Of(5, 2, new EmgBand(20, 299.9)));
        Assert.Null(Whiteness.Of(5, 0, new EmgBand(20, 300)));
        Assert.Equal(0, Whiteness.Mean(density, []));
    }

    [Theory]
    [InlineData(52, true)]
    [InlineData(51.9, false)]
    public void ABandMustHoldOneHarmonic(double toHz, bool isUsable) => Assert.Equal(isUsable, new EmgBand(20, toHz).IsUsable);

    [Theory]
    [InlineData(0.4, 2)]
    [InlineData(2.5, 3)]
    [InlineData(499.49, 499)]
    public void ASegmentIsASecondRounded(double rateHz, int length) => Assert.Equal(length, SpectralFrame.SegmentLengthOf(Rational.FromDecimal((decimal)rateHz)));

    private static SpectralFrame Frame(double rateHz, ScoringSetup setup) => SpectralFrame.Of(Made.Channel(rateHz), 50, 50, [], ScoringFilter.Of(setup));
}
