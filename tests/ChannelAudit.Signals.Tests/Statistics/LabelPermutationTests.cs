using ChannelAudit.Signals.Statistics;
using ChannelAudit.Signals.Tests.Oracles;

namespace ChannelAudit.Signals.Tests.Statistics;

public sealed class LabelPermutationTests
{
    /// <summary>SciPy's permutation_test(permutation_type='independent'), exact, statistic |mean - mean|.</summary>
    [Theory]
    [InlineData("few", 51, 4, 3)]
    [InlineData("even", 52, 5, 5)]
    [InlineData("uneven", 53, 2, 9)]
    [InlineData("tied", 54, 6, 6)]
    [InlineData("many", 55, 7, 8)]
    public void ExactProbabilitiesAgreeWithSciPy(string name, uint seed, int first, int second)
    {
        OracleTable oracle = OracleTable.Read("permutation");
        PermutationResult found = LabelPermutation.Of(Shares.Of(seed, first + second), Labels(first, second), 2, 1);

        Assert.True(found.IsExact);
        Near.Within(1E-12, oracle.Value($"between-{name}", "range"), found.Range);
        Near.Within(1E-12, oracle.Value($"between-{name}", "p"), found.P);
    }

    /// <summary>By hand: of 3 + 3 units apart from each other only the observed arrangement and its mirror are as far apart, 2 of 20.</summary>
    [Fact]
    public void WithThreeAgainstThreeNothingGetsBelowATenth()
    {
        PermutationResult found = LabelPermutation.Of([0, 0.1, 0.2, 0.8, 0.9, 1], [0, 0, 0, 1, 1, 1], 2, 1);

        Assert.Equal((20, true), (found.Arrangements, found.IsExact));
        Near.Within(1E-12, 0.1, found.P);
        Near.Within(1E-12, 0.1, found.SmallestP);
    }

    /// <summary>By hand: two units a label, three labels, 6!/(2! 2! 2!) = 90 arrangements; the three pairs can take any of 6 labels' orders.</summary>
    [Fact]
    public void ThreeLabelsAreExchangedAllAtOnce()
    {
        PermutationResult found = LabelPermutation.Of([0, 0, 5, 5, 9, 9], [0, 0, 1, 1, 2, 2], 3, 1);

        Assert.Equal(90, found.Arrangements);
        Near.Within(1E-12, 9, found.Range);
        Near.Within(1E-12, 6.0 / 90, found.P);
    }

    [Fact]
    public void WithoutAnyDifferenceEveryArrangementIsAsFar()
    {
        PermutationResult found = LabelPermutation.Of([0.5, 0.5, 0.5, 0.5], [0, 0, 1, 1], 2, 1);

        Assert.Equal((0, 1, 1), (found.Range, found.P, found.SmallestP));
    }

    [Fact]
    public void DrawnArrangementsComeNearTheExactProbabilityAndAreTheSameAgain()
    {
        double[] values = Shares.Of(56, 40);
        for (int i = 0; i < 20; i++)
        {
            values[i] += 0.15;
        }

        PermutationResult found = LabelPermutation.Of(values, Labels(20, 20), 2, 7);
        double z = found.Range / StandardDeviationOfDifference(values, 20);

        Assert.False(found.IsExact);
        Assert.Equal(LabelPermutation.Drawn, found.Arrangements);
        Assert.Equal(found, LabelPermutation.Of(values, Labels(20, 20), 2, 7));
        Near.Within(1E-12, 1.0 / 5000, found.SmallestP);

        // With 20 against 20 the exchanged difference is nearly normal: both tails, and three standard errors of 4999 draws.
        double normal = 2 * (1 - MathNet.Numerics.Distributions.Normal.CDF(0, 1, z));
        Near.Within(0.01 + (3 * Math.Sqrt(normal * (1 - normal) / 4999)), normal, found.P);
    }

    /// <summary>Under the null hypothesis at most a twentieth of tests may fall below 0.05.</summary>
    [Fact]
    public void WithoutADifferenceItRarelyCallsOne()
    {
        int called = Enumerable.Range(1, 400).Count(seed => LabelPermutation.Of(Shares.Of((uint)seed * 977, 10), Labels(5, 5), 2, 1).P < 0.05);

        // 20 expected at most; 4 standard deviations of a binomial above it.
        Assert.InRange(called, 1, 38);
    }

    [Fact]
    public void ImpossibleInputIsRefused()
    {
        Assert.Throws<ArgumentException>(() => LabelPermutation.Of([1, 2], [0, 0], 2, 1));
        Assert.Throws<ArgumentException>(() => LabelPermutation.Of([1, 2], [0], 2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => LabelPermutation.Of([1, 2], [0, 0], 1, 1));
    }

    /// <summary>Of 8 and 8 units there are 12 870 arrangements, of 9 and 8 24 310: more than are gone through.</summary>
    [Theory]
    [InlineData(8, true, 12_870)]
    [InlineData(9, false, LabelPermutation.Drawn)]
    public void UpToTwentyThousandArrangementsAreGoneThrough(int others, bool isExact, int arrangements)
    {
        var found = LabelPermutation.Of(NoiseOf.Seed(3, 8 + others), [.. Enumerable.Range(0, 8 + others).Select(i => i < 8 ? 0 : 1)], 2, 1);

        Assert.Equal(isExact, found.IsExact);
        Assert.InRange(found.Arrangements, arrangements, arrangements + 1);
        Assert.Throws<ArgumentException>(() => LabelPermutation.Of(new double[3], [0, 1], 2, 1));
    }

    private static int[] Labels(int first, int second) => [.. Enumerable.Repeat(0, first), .. Enumerable.Repeat(1, second)];

    private static double StandardDeviationOfDifference(double[] values, int ofEach)
    {
        double mean = values.Average();
        double variance = values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1);
        return Math.Sqrt(variance * 2 / ofEach);
    }
}
