using ChannelAudit.Measures;
using ChannelAudit.Signals.Spectra;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>What makes a narrow peak, on densities made bin by bin: 1 everywhere, mains of 50 Hz, a bin 1.0004 Hz wide, so many segments that the median is the mean.</summary>
public sealed class PeakSearchTests
{
    private const int Many = 2_000_000_000;
    private static readonly SpectralFrame Frame = Made.Frame(1000.4);

    [Fact]
    public void PowerErrorAndFrequencyFollowFromTheBins()
    {
        PeakReading peak = Search(Density((124, 4), (125, 10), (126, 4.5), (127, 2)), 19);

        // All around is 1, whose median over bins is biased low by few segments.
        double floor = 1 / PeakFloor.MedianBias(19);
        Near((1 + 4 + 10 + 4.5 + 2 - (5 * floor)) * 1.0004, peak.Power);
        Near(floor * Math.Sqrt(1.5 * 5 / Welch.EffectiveSegments(19)) * 1.0004, peak.StandardError);
        Near(((124 * 4) + (125 * 10) + (126 * 4.5)) / 18.5 * 1.0004, peak.Hz);
    }

    // Of two equal bins the first is the top, and no slope is one: its five bins would hold more.
    [Theory]
    [InlineData("125=10 126=10 128=3", 125, 18)]
    [InlineData("124=20 125=10 127=5", 124, 28)]
    [InlineData("126=20 125=10 123=5", 126, 28)]
    public void OnlyATopIsAPeak(string bins, int top, double excess)
    {
        PeakReading peak = Search(Density(bins));

        Assert.InRange(peak.Hz, (top - 0.5) * 1.0004, (top + 0.5) * 1.0004);
        Near(excess * 1.0004, peak.Power);
    }

    // Beside a harmonic, to 6 bins from its window, only what is higher than all of it. 98 to 102 and 398 to 402 are such windows.
    [Theory]
    [InlineData(108, "102=20", false)]
    [InlineData(108, "102=19.9", true)]
    [InlineData(109, "102=20", true)]
    [InlineData(92, "98=25", false)]
    [InlineData(92, "98=20", false)]
    [InlineData(91, "98=25", true)]
    [InlineData(125, "50=1000 400=1000", true)]
    public void BesideAHarmonicOnlyTheHighestIs(int bin, string line, bool isPeak) => Assert.Equal(isPeak, Search(Density(FormattableString.Invariant($"{bin}=20 {line}"))).Power > 0);

    // 100 above the floor in the five bins: at most 125 within ten. Windows of the mains are not asked.
    [Theory]
    [InlineData("134=25", true)]
    [InlineData("134=31", false)]
    [InlineData("116=31", false)]
    [InlineData("135=31", false)]
    [InlineData("115=31", false)]
    [InlineData("136=31", true)]
    [InlineData("114=31", true)]
    [InlineData("300=31", true)]
    public void FiveBinsHoldMostOfTwentyOne(string other, bool isPeak) => Assert.Equal(isPeak, Search(Density($"125=101 {other}")).Power > 50);

    [Fact]
    public void AHarmonicBesideItMakesItNoBroader() => Assert.True(Search(Density("110=101 101=60")).Power > 50);

    // Power and all within ten bins are both times the width of a bin.
    [Theory]
    [InlineData(0.8003, true)]
    [InlineData(0.7997, false)]
    public void TheShareIsOneOfPowers(double share, bool isPeak) => Assert.Equal(isPeak, Search(Density((125, 101), (134, (100 / share) - 99))).Power > 50);

    [Theory]
    [InlineData(104 * 1.0002, true)]
    [InlineData(105.04 * 1.0006, false)]
    public void BelowTheLeastPowerNothingIsLookedAt(double least, bool isPeak) => Assert.Equal(isPeak, NarrowPeak.Of(Density("125=101"), Frame, Many, least).Power > 0);

    [Fact]
    public void TheStrongestWins()
    {
        // The later one holds more with all that is around it, and less above that.
        double[] density = Density("125=101");
        density.AsSpan(270, 40).Fill(50);
        density[283] = 110;

        Assert.Equal(125 * 1.0004, Search(density).Hz, 0.5);
        Assert.Equal(125 * 1.0004, Search(Density("125=101 175=101")).Hz, 0.5);
        Assert.Equal(175 * 1.0004, Search(Density("125=101 175=102")).Hz, 0.5);
    }

    [Fact]
    public void BehindAFilterTheStrongestOfWhatIsLeftWins()
    {
        double[] passes = [.. Enumerable.Range(0, Frame.Bins).Select(bin => bin < 150 ? 0.25 : 0.5)];
        PeakReading peak = NarrowPeak.Of(Density("125=101 175=81"), Frame, Many, 0, passes);

        Near(40 * 1.0004, peak.Power);
        Near(Math.Sqrt(1.5 * 5 * 0.25 / Welch.EffectiveSegments(Many)) * 1.0004, peak.StandardError);
    }

    [Theory]
    [InlineData(125.3, 20)]
    [InlineData(127.6, 0)]
    [InlineData(122.8, 20)]
    public void AtAFrequencyTheNearestFiveBinsCount(double hz, double excess) => Near(excess * 1.0004, NarrowPeak.AtHz(Density("125=21"), Frame, Many, hz).Power);

    [Fact]
    public void AboveTheSpectrumItsLastBinsCount()
    {
        PeakReading peak = NarrowPeak.AtHz(Density("500=7"), Frame, Many, 9999);

        // Of three bins, two are there; of five, three, less five times the floor.
        Near((7 + 1 + 1 - 5) * 1.0004, peak.Power);
        Near(((500 * 7) + 499) / 8.0 * 1.0004, peak.Hz);
    }

    [Fact]
    public void WhereThereIsNothingItIsTheBinsFrequency() => Near(100 * 1.0004, NarrowPeak.AtHz(new double[Frame.Bins], Frame, Many, 100).Hz);

    [Fact]
    public void TheMuscleIsTheBandWithoutThePeak()
    {
        PeakReading peak = new(2, 0, 125);

        // The band power counts each open bin for all: bins 20 to 449 (450 Hz), less five for each of eight harmonics and two of the ninth.
        Near(10 - (2 * 430 / 388.0), NarrowPeak.MuscleBeside(peak, 10, Frame));
        Near(10e-9, NarrowPeak.MuscleBeside(new PeakReading(20, 0, 125), 10, Frame));
    }

    // The median of what is 3 to 10 bins away, and never of bin 0.
    [Theory]
    [InlineData(2, 8.5)]
    [InlineData(4, 10)]
    [InlineData(20, 17)]
    [InlineData(28, 21.5)]
    public void TheFloorIsTheMedianBesideThePeak(int bin, double expected) => Assert.Equal(expected, PeakFloor.At([.. Enumerable.Range(0, 30)], bin, 1));

    [Fact]
    public void WithoutBinsAroundTheFloorIsZero() => Assert.Equal(0, PeakFloor.At([5, 5, 5], 1, 1));

    private static PeakReading Search(double[] density, int segments = Many) => NarrowPeak.Of(density, Frame, segments);

    private static double[] Density(string bins) =>
        Density([.. bins.Split(' ').Select(text => text.Split('=')).Select(pair => (Whole(pair[0]), double.Parse(pair[1], System.Globalization.CultureInfo.InvariantCulture)))]);

    private static double[] Density(params (int Bin, double Value)[] bins)
    {
        double[] density = new double[Frame.Bins];
        density.AsSpan().Fill(1);
        foreach ((int bin, double value) in bins)
        {
            density[bin] = value;
        }

        return density;
    }

    private static int Whole(string text) => int.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static void Near(double expected, double actual) => Assert.InRange(actual, expected - (1e-8 * Math.Abs(expected)) - 1e-12, expected + (1e-8 * Math.Abs(expected)) + 1e-12);
}
