using ChannelAudit.Signals.Random;
using ChannelAudit.Signals.Trends;

namespace ChannelAudit.Signals.Tests.Trends;

public sealed class ChangeTestTests
{
    [Fact]
    public void AStepOfOneSpreadInTheMiddleIsSeenInHundredBlocks()
    {
        Pcg32 random = new(12);
        double[] values = [.. Enumerable.Range(0, 100).Select(i => random.NextGaussian() + (i < 50 ? 0 : 1))];

        Assert.InRange(ChangeTest.Of(values, [.. Enumerable.Range(0, 100)]).P, 0, 1e-3);
    }

    [Fact]
    public void OffsetGainAndPolarityDoNotCount()
    {
        Pcg32 random = new(13);
        double[] values = [.. Enumerable.Range(0, 60).Select(i => random.NextGaussian() + (i / 40.0))];
        int[] blocks = [.. Enumerable.Range(0, 60).Select(i => i / 2)];

        ChangeTestResult expected = ChangeTest.Of(values, blocks);

        Near.One(expected.P, ChangeTest.Of([.. values.Select(value => 7 + (3 * value))], blocks).P, 1e-9);
        Near.One(expected.P, ChangeTest.Of([.. values.Select(value => -value)], blocks).P, 1e-9);
    }

    [Fact]
    public void EqualValuesAndASingleBlockSayNothing()
    {
        Assert.Equal(1, ChangeTest.Of([2, 2, 2], [1, 2, 3]).P);
        Assert.Equal(1, ChangeTest.Of([1, 2, 3], [1, 1, 1]).P);
        Assert.Equal(1, ChangeTest.Of([], []).P);
    }

    [Fact]
    public void BlocksOutOfOrderAreRefused() => Assert.Throws<ArgumentException>(() => ChangeTest.Of([1, 2], [2, 1]));

    // Sums -1/2, -1/2, 1/2, 1/2 add up to -1 and back: all of their square is a step in the middle, of which 10^-12 is left open. Neighbours: 1/4, and 1/sqrt(4) more.
    [Fact]
    public void FourValuesAreWorkedOutByHand()
    {
        var result = ChangeTest.Of([0, 0, 1, 1], [0, 1, 2, 3]);

        Assert.Equal(4, result.Blocks);
        Near.One(0.75, result.Correlation, 1e-12);
        Near.One(Math.Sqrt(12 * Math.Log(10) / 7), result.Statistic, 1e-5);
        Assert.Equal(KuiperTail.Of(result.Statistic), result.P);
    }

    // Ten that go up and down: sums from 0 to 1, of a square of 10. That is no sign, and no correlation is asked.
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void UpAndDownIsNoChange(double sign)
    {
        var result = ChangeTest.Of([.. Enumerable.Range(0, 10).Select(i => i % 2 == 0 ? sign : -sign)], [.. Enumerable.Range(0, 10)]);

        Near.One(Math.Sqrt(-2.5 * Math.Log(0.96)), result.Statistic, 1e-9);
        Assert.Equal((0, 10), (result.Correlation, result.Blocks));
        Assert.InRange(result.P, 0.99, 1);
    }

    // A step of 1 in the middle and what is left beside it, which sums to 0 on either side: neighbours of + + - - have 1/8 and 1/sqrt(8) more, of + - + - less than nothing.
    [Theory]
    [InlineData("++--++--", 1, 0.125 + 0.35355339059327379)]
    [InlineData("+-+-+-+-", 1, 0)]
    [InlineData("++--++--", 3, 0.125 + 0.35355339059327379)]
    public void CorrelationIsThatOfWhatIsLeftBesideTheStep(string left, int inBlock, double correlation)
    {
        double[] values = [.. left.SelectMany((sign, i) => Enumerable.Repeat((i < 4 ? 0 : 1) + (sign == '+' ? 0.1 : -0.1), inBlock))];

        var result = ChangeTest.Of(values, [.. values.Select((_, i) => 3 * (i / inBlock))]);

        Assert.Equal(8, result.Blocks);
        Near.Within(1e-9, correlation, result.Correlation);

        // Sums fall to -2 by the fourth; squares are 8 of 1/4 and 1/100, as the two have nothing in common.
        var share = 4 * 4 / (8 * 0.26 * 8);
        Near.One(Math.Sqrt(-2 * Math.Log(1 - share) * (1 - correlation) / (1 + correlation)), result.Statistic, 1e-9);
    }

    // Seven blocks are too few for a shape: 4/6 of their square are of neighbours, and 1/sqrt(7) more is above 0.9.
    [Fact]
    public void NoCorrelationIsTakenAsMoreThanNineTenths()
    {
        var result = ChangeTest.Of([-1, -1, -1, 0, 1, 1, 1], [0, 1, 2, 3, 4, 5, 6]);

        Assert.Equal(0.9, result.Correlation);
        Near.One(Math.Sqrt(1.75 * Math.Log(7) / 19), result.Statistic, 1e-9);
    }

    // Sums of -3 and 3, whose neighbours have nothing in common.
    [Fact]
    public void ValuesOfABlockCountTogether()
    {
        var result = ChangeTest.Of([-1, -1, -1, 3], [5, 5, 5, 9]);

        Assert.Equal((0, 2), (result.Correlation, result.Blocks));
        Near.One(Math.Sqrt(6 * Math.Log(10)), result.Statistic, 1e-5);
    }
}
