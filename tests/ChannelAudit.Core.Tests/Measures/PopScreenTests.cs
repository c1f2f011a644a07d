using ChannelAudit.Measures;
using ChannelAudit.Signals.Filters;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Where pops are possible on a signal that is 1 and -1 in turn at 1000 Hz, and how much of its energy they hold.</summary>
public sealed class PopScreenTests
{
    private const int Rate = 1000;

    [Theory]
    [InlineData("5230=30", "7200-7300")]
    [InlineData("5230=-30", "7200-7300")]
    [InlineData("5230=1.9", "")]
    [InlineData("0=30 9999=30", "2000-2100 11900-12000")]
    [InlineData("5230=30 6100=30", "7200-8200")]
    [InlineData("5230=30 7000=30", "7200-7300 9000-9100")]
    public void OnlyTenthsOfASecondThatHoldMoreThanTwiceTheUsualAreLookedAt(string spikes, string places)
    {
        PopScreen screen = new(Rate);
        screen.Add(With(10_000, spikes), 2000);

        Assert.InRange(screen.LeastHeight, 1.95, 2.05);
        Assert.Equal(places, Text(screen));
    }

    [Fact]
    public void EachBlockHasItsOwnPlaceInTime()
    {
        PopScreen screen = new(Rate);
        screen.Add(With(4250, "1000=30 4240=30"), 0);
        screen.Add(With(4000, "10=30"), 20_000);

        Assert.Equal("1000-1100 4200-4300 20000-20100", Text(screen));
    }

    [Fact]
    public void ASilentChannelHasNone()
    {
        PopScreen screen = new(Rate);
        screen.Add(new double[2000], 0);

        Assert.Equal(0, screen.LeastHeight);
        Assert.Equal(string.Empty, Text(screen));
    }

    // Counted once more by plain sums: 50 ms on either side of each, and all that is half as high as the least.
    [Theory]
    [InlineData("")]
    [InlineData("1500")]
    [InlineData("1500 1530 2999")]
    public void TheShareIsThatOfTheSurroundingsAndOfAllThatIsHalfAsHigh(string at)
    {
        const long start = 7000;
        const double least = 20;
        long[] pops = [.. at.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(text => start + int.Parse(text, System.Globalization.CultureInfo.InvariantCulture))];
        double[] samples = With(3000, "100=15 1500=40 1530=-40 2100=9 2999=30");
        double[] passed = new double[samples.Length];
        SettledHighPass.Filter(Butterworth.HighPass(20, Rate), samples, 0, passed);
        (double atPops, double all) = PopShare.Energy(samples, start, pops, least, Rate);

        Assert.Equal(passed.Sum(value => value * value), all, 9);
        Assert.Equal(passed.Where((value, i) => Math.Abs(value) >= least / 2 || pops.Any(pop => Math.Abs(pop - start - i) <= 50)).Sum(value => value * value), atPops, 9);
    }

    [Theory]
    [InlineData(1000, 500)]
    [InlineData(497.4, 248)]
    public void TheFilterWarmsUpForHalfASecond(double rateHz, int samples) => Assert.Equal(samples, PopFilter.WarmUp(rateHz));

    [Fact]
    public void APeakIsReadAsAnAmplitudeAndARatio()
    {
        PeakReading peak = new(4, 2.5, 50);

        Assert.Equal((2, 3), (peak.Rms, peak.UpperRms));
        Assert.Equal(-10, peak.RatioDb(40)!.Value, 12);
        Assert.Equal(-20, peak.RatioDb(400)!.Value, 12);
        Assert.Null(peak.RatioDb(0));
        Assert.Null(default(PeakReading).RatioDb(40));
    }

    private static string Text(PopScreen screen) => string.Join(' ', screen.Places().All.Select(place => FormattableString.Invariant($"{place.From}-{place.To}")));

    private static double[] With(int count, string spikes)
    {
        double[] y = [.. Enumerable.Range(0, count).Select(i => i % 2 == 0 ? 1.0 : -1)];
        foreach (string[] spike in spikes.Split(' ').Select(one => one.Split('=')))
        {
            y[int.Parse(spike[0], System.Globalization.CultureInfo.InvariantCulture)] = double.Parse(spike[1], System.Globalization.CultureInfo.InvariantCulture);
        }

        return y;
    }
}
