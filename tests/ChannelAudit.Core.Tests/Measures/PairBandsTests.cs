using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>The bins in which pairs are compared, with 60 Hz mains, and what is read from them.</summary>
public sealed class PairBandsTests
{
    [Theory]
    [InlineData(1000, "30-57 63-117 123-177 183-237 243-250", "303-357 363-417 423-450")]
    [InlineData(1000.4, "30-57 63-117 123-177 183-237 243-249", "303-357 363-417 423-449")]
    public void BothBandsLeaveOutTheMains(double rateHz, string low, string high)
    {
        PairBands bands = Of(rateHz, null, null);

        Assert.Equal(low, Made.Text(bands.Low));
        Assert.Equal(high, Made.Text(bands.High));
        Assert.Equal(30, bands.FirstBin);
        Assert.Equal(bands.High[^1].To - 29, bands.BinCount);
        Assert.Equal((bands.High[^1].To - 302 - 10) * (rateHz / Math.Round(rateHz)), bands.HighWidthHz, 9);
        Assert.True(bands.HasLow && bands.HasHigh);
    }

    // The band ends at 0.9 of the lower low-pass; 250 Hz are enough for one band, 400 for the other.
    [Theory]
    [InlineData(450.0, null, true, "303-357 363-405")]
    [InlineData(null, 450.0, true, "303-357 363-405")]
    [InlineData(400 / 0.9, null, true, "303-357 363-400")]
    [InlineData(444.0, null, true, "")]
    [InlineData(250 / 0.9, null, true, "")]
    [InlineData(277.0, null, false, "")]
    [InlineData(null, 277.0, false, "")]
    public void ALowPassTakesBandsAway(double? a, double? b, bool hasLow, string high)
    {
        PairBands bands = Of(1000, a, b);

        Assert.Equal(hasLow, bands.HasLow);
        Assert.Equal(high, Made.Text(bands.High));
        Assert.Equal(high.Length > 0, bands.HasHigh);
        Assert.Equal((hasLow ? 30 : 0, hasLow ? (high.Length > 0 ? bands.High[^1].To : 250) - 29 : 0), (bands.FirstBin, bands.BinCount));
    }

    // Four bins of the main band and three of the high one, with numbers of their own.
    [Fact]
    public void AReadingIsMadeOfSums()
    {
        PairBands bands = Of(1000, null, null);
        (double[] a, double[] b, double[] re, double[] im) = (Few(bands, 2), Few(bands, 8), Few(bands, -1.5), Few(bands, 3));
        PairReading pair = PairReading.Of(bands, re.AsSpan(bands.FirstBin), im.AsSpan(bands.FirstBin), a, b, 5)!.Value;

        // Every open bin of the main band counts 1, its last 10; of the high band 3, its last 30.
        Assert.Equal(-1.5 / 4, pair.Rho, 12);
        Assert.Equal(-1.5 / 4, pair.RhoHigh!.Value, 12);
        Assert.Equal(1 - (2 * 1.5 / 10), pair.Distance, 12);
        Assert.Equal((2.25 + 9) / 16, pair.Coherence!.Value, 12);
        Assert.Equal((-0.75, -0.1875), (pair.GainAb, pair.GainBa));
    }

    [Theory]
    [InlineData(30, 250)]
    [InlineData(303, 450)]
    public void ItsFirstAndLastBinsCount(int first, int last)
    {
        PairBands bands = Of(1000, null, null);
        double[] flat = Few(bands, 1);
        double[] re = new double[flat.Length];
        (re[first], re[last]) = (0.5, 0.25);
        PairReading pair = PairReading.Of(bands, re.AsSpan(bands.FirstBin), new double[bands.BinCount], flat, flat, 5)!.Value;
        double power = first == 30 ? bands.Low.Sum(range => range.Count) + 9 : (3 * bands.High.Sum(range => range.Count)) + 27;

        Assert.Equal(0.75 / power, first == 30 ? pair.Rho : pair.RhoHigh!.Value, 12);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    [InlineData(0, 0)]
    public void AChannelWithNothingInTheBandHasNoReading(double a, double b)
    {
        PairBands bands = Of(1000, null, null);

        Assert.Null(PairReading.Of(bands, new double[bands.BinCount], new double[bands.BinCount], Few(bands, a), Few(bands, b), 5));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    public void NothingInTheHighBandIsNoHighCorrelation(double a, double b)
    {
        PairBands bands = Of(1000, null, null);
        double[] lowOnly = Few(bands, 1);
        lowOnly.AsSpan(300).Clear();
        double[] flat = Few(bands, 1);
        PairReading pair = PairReading.Of(bands, new double[bands.BinCount], new double[bands.BinCount], a > 0 ? flat : lowOnly, b > 0 ? flat : lowOnly, 5)!.Value;

        Assert.Null(pair.RhoHigh);
        Assert.Equal(0, pair.Coherence);
    }

    [Fact]
    public void ABinWithNothingHasNoCoherence()
    {
        PairBands bands = Of(1000, null, null);
        double[] mostlyNothing = new double[501];
        mostlyNothing[40] = 1;

        Assert.Equal(0, PairReading.Of(bands, Few(bands, 1).AsSpan(30), new double[bands.BinCount], mostlyNothing, mostlyNothing, 5)!.Value.Coherence);
    }

    private static PairBands Of(double rateHz, double? lowpassA, double? lowpassB) => PairBands.Of(Made.Frame(rateHz, 60, 60, lowpassA), Made.Frame(rateHz, 60, 60, lowpassB));

    private static double[] Few(PairBands bands, double factor) =>
        [.. Enumerable.Range(0, 501).Select(bin => factor * (bin < 300 ? 1 : 3) * (bin == bands.Low[^1].To || bin == bands.High[^1].To ? 10 : 1))];
}
