using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Rails, stated and hidden.</summary>
public sealed class ClippingTests
{
    [Theory]
    [InlineData(0.5, 0.66667)]
    [InlineData(0.8, 0.40967)]
    [InlineData(0.9, 0.28713)]
    [InlineData(0.95, 0.20217)]
    [InlineData(0.99, 0.09011)]
    public void ASineAgainstARailIsClippedForTheShareOfTheArcCosine(double rail, double expected)
    {
        // 2/pi acos(rail): the frequency shares no period with the count, so the phases are spread evenly.
        const int count = 200_000;
        double[] sine = [.. Made.Sine(1, 1000 * (Math.Sqrt(5) - 1) / 2, 1000, count).Select(value => Math.Clamp(value, -rail, rail))];

        Assert.Equal(expected, (double)Count(sine, -rail, rail).Samples / count, 5e-5);
    }

    [Fact]
    public void SingleSamplesAndRunsAreCountedOnBothSides()
    {
        ClippingCount count = Count([0, 10, 0, -10, -10, -10, 0, 9.5, 10, 0], -10, 10, 1);

        Assert.Equal(6, count.Samples);
        Assert.Equal(3, count.LongestRun);
    }

    [Fact]
    public void ARunGoesOnFromBlockToBlockButNotAcrossAGap()
    {
        ClippingCount whole = new(new Rails(null, 10, false, false, 1));
        whole.Add([10, 10, 10], 0);
        whole.Add([10, 10, 0], 3);
        whole.Break(6);
        ClippingCount broken = new(new Rails(null, 10, false, false, 1));
        broken.Add([10, 10, 10], 0);
        broken.Break(3);
        broken.Add([10, 10, 0], 100);
        broken.Break(103);

        Assert.Equal(5, whole.LongestRun);
        Assert.Equal(3, broken.LongestRun);
        Assert.Equal(5, broken.Samples);
    }

    // Samples are looked at by 256: runs across and at the ends of such blocks, and the extremes of all.
    [Fact]
    public void PlacesAndExtremesAreThoseOfTheWholeStretch()
    {
        double[] samples = Made.Noise(54, 2, 1000);
        foreach ((int from, int to) in new[] { (0, 2), (250, 260), (512, 513), (999, 1000) })
        {
            samples.AsSpan(from, to - from).Fill(from == 512 ? -10 : 10);
        }

        SampleRanges places = new();
        ClippingCount count = new(new Rails(-10, 10, false, false, 0), places);
        (double least, double greatest) = count.Add(samples, 5000);
        count.Break(6000);
        count.Break(7000);

        Assert.Equal([(5000L, 5002L), (5250L, 5260L), (5512L, 5513L), (5999L, 6000L)], places.All);
        Assert.Equal((14, 10), (count.Samples, count.LongestRun));
        Assert.Equal((-10, 10), (least, greatest));
    }

    [Fact]
    public void ARunThatEndsWithItsBlockEndsThere()
    {
        double[] samples = new double[700];
        samples.AsSpan(253, 3).Fill(10);
        SampleRanges places = new();
        ClippingCount count = new(new Rails(null, 10, false, false, 0), places);
        count.Add(samples, 5000);
        count.Break(5700);

        Assert.Equal((5253L, 5256L), Assert.Single(places.All));
        Assert.Equal(3, count.LongestRun);
    }

    [Fact]
    public void WithoutRailsOnlyTheExtremesAreTold()
    {
        ClippingCount count = new(default);

        Assert.Equal((-7, 8), count.Add([3, -7, 8, 0], 0));
        Assert.Equal((0, 0), (count.Samples, count.LongestRun));
        Assert.Throws<ArgumentException>(() => count.Add([], 0));
        Assert.Throws<ArgumentException>(() => new ClippingCount(new Rails(-1, 1, false, false, 0)).Add([], 0));
    }

    [Theory]
    [InlineData(-10.0, 10.0, -8.9, false, 1.1)]
    [InlineData(-10.0, 10.0, -9, true, 1.0)]
    [InlineData(-10.0, 10.0, 9, true, 1.0)]
    [InlineData(-10.0, 10.0, 8.9, false, 1.1)]
    [InlineData(null, 10.0, -99, false, 109.0)]
    [InlineData(-10.0, null, 99, false, 109.0)]
    [InlineData(null, null, 99, false, null)]
    public void ARailHoldsWhatIsWithinAStep(double? lower, double? upper, double level, bool holds, double? distance)
    {
        Rails rails = new(lower, upper, false, false, 1);

        Assert.Equal(holds, rails.Holds(level));
        Assert.Equal(lower is not null || upper is not null, rails.AnyKnown);
        Assert.Equal(distance is null, rails.DistanceFrom(level) is null);
        Assert.Equal(distance ?? 0, rails.DistanceFrom(level) ?? 0, 12);
    }

    [Fact]
    public void WithoutAStepThereIsNoPile()
    {
        ExtremePile pile = new(0);
        pile.Add([1, 5, 5, 5, 5, 5, 5, 5, 2], 1);

        Assert.False(pile.IsRail(100));
        Assert.Equal((5, 5, 0), (pile.Extreme, pile.Floor, pile.Step));
    }

    // Six samples at the top, each alone: held only where two stand side by side, and no pause between them.
    [Theory]
    [InlineData(false, true)]
    [InlineData(true, false)]
    public void APauseParts(bool pause, bool isRail)
    {
        ExtremePile pile = new(1);
        for (int i = 0; i < 6; i++)
        {
            pile.Add([0, 50], 1);
        }

        if (pause)
        {
            pile.Break();
        }

        pile.Add([50], 1);
        Assert.Equal(44.5, pile.Floor);
        Assert.Equal(isRail, pile.IsRail(100));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void ARailBelowTheFilesLimitIsSeenOnEitherSide(int sign)
    {
        double[] samples = [.. Made.Noise(51, 100, 20_000).Select(value => Math.Round(Math.Min(value, 220)) * sign)];

        ExtremePile pile = Pile(samples, sign);

        Assert.True(pile.IsRail(samples.Length));
        Assert.Equal(220, pile.Extreme);
    }

    [Fact]
    public void AnalogPeaksAreNoRails()
    {
        double[] sine = [.. Made.Sine(1000, 1.3, 1000, 20_000).Select(value => Math.Round(value))];
        double[] noise = [.. Made.Noise(52, 100, 200_000).Select(value => Math.Round(value))];

        Assert.False(Pile(sine, 1).IsRail(sine.Length));
        Assert.False(Pile(sine, -1).IsRail(sine.Length));
        Assert.False(Pile(noise, 1).IsRail(noise.Length));
    }

    [Fact]
    public void ALevelHeldForHalfTheRecordingIsNoRail()
    {
        double[] square = [.. Enumerable.Range(0, 10_000).Select(n => n / 500 % 2 == 0 ? 100.0 : -100.0)];

        Assert.False(Pile(square, 1).IsRail(square.Length));
    }

    [Fact]
    public void FiveSamplesAreNotEnoughForARailAndSixAre()
    {
        double[] Samples(int held) => [.. Made.Noise(53, 10, 5000).Select(value => Math.Round(value)), .. Enumerable.Repeat(500.0, held), 0];

        Assert.False(Pile(Samples(5), 1).IsRail(5006));
        Assert.True(Pile(Samples(6), 1).IsRail(5007));
    }

    // The top is cut at 4 steps, and after 40 samples some steps higher: what was counted moves down.
    [Theory]
    [InlineData(1)]
    [InlineData(0.25)]
    [InlineData(3)]
    public void ThePileOfTheExtremeIsCountedAsByHand(double step)
    {
        int rails = 0;
        for (ulong seed = 0; seed < 300; seed++)
        {
            int rise = (int)(seed % 7);
            double[] samples = [.. Made.Noise(600 + seed, 20, 80).Select((value, i) => step * Math.Round(Math.Min(value, i < 40 ? 4 : 4 + rise)))];
            bool isRail = IsRailByHand(samples, step);
            rails += isRail ? 1 : 0;

            Assert.Equal(isRail, Pile(samples, 1, step).IsRail(samples.Length));
        }

        Assert.InRange(rails, 60, 240);
    }

    private static bool IsRailByHand(double[] samples, double step)
    {
        double top = samples.Max();
        int atRail = samples.Count(value => value >= top - step);
        int below = samples.Count(value => value < top - step && value >= top - (5 * step));
        bool held = samples.Skip(1).Where((value, i) => value >= top - step && samples[i] >= top - step).Any();
        return atRail >= 6 && atRail >= 4 * below && held && 2 * atRail < samples.Length;
    }

    private static ExtremePile Pile(double[] samples, double sign, double step = 1)
    {
        ExtremePile pile = new(step);
        pile.Add(samples, sign);
        return pile;
    }

    private static ClippingCount Count(double[] samples, double lower, double upper, double step = 0)
    {
        ClippingCount count = new(new Rails(lower, upper, false, false, step));
        count.Add(samples, 0);
        count.Break(samples.Length);
        return count;
    }
}
