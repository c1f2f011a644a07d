using ChannelAudit.Signals.Statistics;
using ChannelAudit.Signals.Tests.Oracles;

namespace ChannelAudit.Signals.Tests.Statistics;

public sealed class WithinPermutationTests
{
    /// <summary>SciPy's permutation_test(permutation_type='samples'), exact, statistic |mean - mean|.</summary>
    [Theory]
    [InlineData("four", 61, 4)]
    [InlineData("seven", 62, 7)]
    [InlineData("twelve", 63, 12)]
    [InlineData("fourteen", 64, 14)]
    public void ExactProbabilitiesAgreeWithSciPy(string name, uint seed, int units)
    {
        OracleTable oracle = OracleTable.Read("permutation");
        PermutationResult found = WithinPermutation.Of(Shares.Of(seed, 2 * units), 2, 1);

        Assert.True(found.IsExact);
        Assert.InRange(found.Arrangements, 2, 1 << (units - 1));
        Near.Within(1E-12, oracle.Value($"within-{name}", "range"), found.Range);
        Near.Within(1E-12, oracle.Value($"within-{name}", "p"), found.P);
    }

    /// <summary>By hand: five units that all differ the same way: 2 of 2^5 sign patterns are as far from 0, so that no five reach 0.05.</summary>
    [Fact]
    public void FiveUnitsCannotReachOneInTwenty()
    {
        PermutationResult found = WithinPermutation.Of([0, 0.5, 0.1, 0.6, 0, 1, 0.2, 0.3, 0, 0.1], 2, 1);

        Assert.Equal(16, found.Arrangements);
        Near.Within(1E-12, 2.0 / 32, found.P);
        Near.Within(1E-12, 2.0 / 32, found.SmallestP);
    }

    /// <summary>By hand: units that do not differ add nothing; of three signs that count, 2 of 8 patterns are as far.</summary>
    [Fact]
    public void UnitsWithoutADifferenceAddNothing()
    {
        PermutationResult found = WithinPermutation.Of([0, 0.5, 0.1, 0.6, 0, 1, 0.2, 0.2, 0, 0], 2, 1);

        Assert.Equal(4, found.Arrangements);
        Near.Within(1E-12, 0.25, found.P);
        Near.Within(1E-12, 0.25, found.SmallestP);
    }

    [Fact]
    public void WithoutAnyDifferenceThereIsOneArrangement()
    {
        PermutationResult found = WithinPermutation.Of([0.5, 0.5, 0.1, 0.1], 2, 1);

        Assert.Equal(new PermutationResult(0, 1, 1, true, 1), found);
    }

    /// <summary>Nineteen pairs of which all differ by as much: the largest range is that of all signs alike, which 4999 draws hardly meet.</summary>
    [Fact]
    public void DrawsSayHowSmallAProbabilityCouldHaveBeen()
    {
        PermutationResult alike = WithinPermutation.Of([.. Enumerable.Range(0, 19).SelectMany(_ => new[] { 0.0, 1.0 })], 2, 1);
        PermutationResult one = LabelPermutation.Of([.. Enumerable.Range(0, 40).Select(i => i == 0 ? 1.0 : 0.0)], [.. Enumerable.Range(0, 40).Select(i => i / 20)], 2, 1);

        Assert.Equal((1.0 / 5000, 1.0 / 5000), (alike.P, alike.SmallestP));
        Assert.Equal((1, 1), (one.P, one.SmallestP));
    }

    /// <summary>By hand: the second of two units can take 6 orders, and the range is largest when largest and smallest values meet: one of 6.</summary>
    [Fact]
    public void ThreeLabelsTakeAllTheirOrders()
    {
        PermutationResult found = WithinPermutation.Of([0, 2, 9, 0, 2, 9], 3, 1);

        Assert.Equal(6, found.Arrangements);
        Near.Within(1E-12, 9, found.Range);
        Near.Within(1E-12, 1.0 / 6, found.P);
    }

    [Fact]
    public void ManyUnitsAreDrawnAndTheSameAgain()
    {
        double[] values = Shares.Of(65, 60);
        for (int i = 0; i < values.Length; i += 2)
        {
            values[i] += 0.6;
        }

        PermutationResult found = WithinPermutation.Of(values, 2, 3);

        Assert.Equal((LabelPermutation.Drawn, false), (found.Arrangements, found.IsExact));
        Assert.Equal(found, WithinPermutation.Of(values, 2, 3));
        Assert.InRange(found.P, 1.0 / 5000, 0.01);
    }

    [Fact]
    public void ImpossibleInputIsRefused()
    {
        Assert.Throws<ArgumentException>(() => WithinPermutation.Of([1, 2, 3], 2, 1));
        Assert.Throws<ArgumentException>(() => WithinPermutation.Of([], 2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => WithinPermutation.Of([1, 2], 1, 1));
    }

    /// <summary>Six orders of three values each: 6^5 = 7776 for six units, the first one standing still; 6^6 are more than are gone through.</summary>
    [Theory]
    [InlineData(6, true, 7776)]
    [InlineData(7, false, LabelPermutation.Drawn)]
    public void UpToTwentyThousandOrdersAreGoneThrough(int units, bool isExact, int orders)
    {
        var found = WithinPermutation.Of(NoiseOf.Seed(4, 3 * units), 3, 1);

        Assert.Equal(isExact, found.IsExact);
        Assert.InRange(found.Arrangements, orders, orders + 1);
    }
}
