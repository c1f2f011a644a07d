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

        Assert.Equal((1 << units, true), (found.Arrangements, found.IsExact));
        Near.Within(1E-12, oracle.Value($"within-{name}", "range"), found.Range);
        Near.Within(1E-12, oracle.Value($"within-{name}", "p"), found.P);
    }

    /// <summary>By hand: five units that all differ the same way: 2 of 2^5 sign patterns are as far from 0, so that no five reach 0.05.</summary>
    [Fact]
    public void FiveUnitsCannotReachOneInTwenty()
    {
        PermutationResult found = WithinPermutation.Of([0, 0.5, 0.1, 0.6, 0, 1, 0.2, 0.3, 0, 0.1], 2, 1);

        Near.Within(1E-12, 2.0 / 32, found.P);
        Near.Within(1E-12, 2.0 / 32, found.SmallestP);
    }

    /// <summary>By hand: units that do not differ add nothing; of three signs that count, 2 of 8 patterns are as far.</summary>
    [Fact]
    public void UnitsWithoutADifferenceAddNothing()
    {
        PermutationResult found = WithinPermutation.Of([0, 0.5, 0.1, 0.6, 0, 1, 0.2, 0.2, 0, 0], 2, 1);

        Near.Within(1E-12, 0.25, found.P);
        Near.Within(1E-12, 0.25, found.SmallestP);
    }

    /// <summary>By hand: two units with three labels in the same order have 36 arrangements, 6 of them with both in one order; the range is largest
    /// when the largest values meet and the smallest meet: of 36, those 6.</summary>
    [Fact]
    public void ThreeLabelsTakeAllTheirOrders()
    {
        PermutationResult found = WithinPermutation.Of([0, 2, 9, 0, 2, 9], 3, 1);

        Assert.Equal(36, found.Arrangements);
        Near.Within(1E-12, 9, found.Range);
        Near.Within(1E-12, 6.0 / 36, found.P);
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
}
