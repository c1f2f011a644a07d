using System.Globalization;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Signals.Tests.Oracles;
using CsCheck;

namespace ChannelAudit.Signals.Tests.Statistics;

public sealed class FisherExactTests
{
    /// <summary>Fisher 1935, chapter 2, the lady with eight cups: 17/70 one-sided, 34/70 two-sided; all right: 1/70 and 2/70.</summary>
    [Fact]
    public void TheTastedCupsComeOutAsFisherHasThem()
    {
        Near.Within(1E-12, 34.0 / 70, FisherExact.Of(3, 1, 1, 3).TwoSided);
        Near.Within(1E-12, 17.0 / 70, FisherExact.Of(3, 1, 1, 3).Greater);
        Near.Within(1E-12, 2.0 / 70, FisherExact.Of(4, 0, 0, 4).TwoSided);
        Near.Within(1E-12, 1.0 / 70, FisherExact.Of(4, 0, 0, 4).Greater);
    }

    /// <summary>Sums of hypergeometric probabilities worked out apart from any program of this kind, to seven digits.</summary>
    [Theory]
    [InlineData(8, 2, 1, 5, 0.0349650350)]
    [InlineData(1, 9, 11, 3, 0.0027594562)]
    [InlineData(0, 20, 6, 14, 0.0201960)]
    [InlineData(2, 38, 12, 28, 0.0064480)]
    [InlineData(3, 37, 11, 29, 0.0367375)]
    public void SmallTablesComeOutAsWorkedOut(int a, int b, int c, int d, double twoSided) =>
        Near.Within(1E-7, twoSided, FisherExact.Of(a, b, c, d).TwoSided);

    [Fact]
    public void TheConditionalOddsRatioIsThatOfTheTable()
    {
        // Row 30: SciPy's contingency.odds_ratio, 15.4658; R prints 15.46969.
        Near.Within(1E-3, 15.4658, FisherExact.Of(8, 2, 1, 5).ConditionalOddsRatio!.Value);

        // Tea tasting, Fisher 1935: 6.408309 (lecture page).
        Near.Within(1E-3, 6.408309, FisherExact.Of(3, 1, 1, 3).ConditionalOddsRatio!.Value);
        Near.Within(1E-9, 1, FisherExact.Of(5, 5, 7, 7).ConditionalOddsRatio!.Value);
        Assert.Null(FisherExact.Of(4, 0, 0, 4).ConditionalOddsRatio);
    }

    [Fact]
    public void TheOddsRatioIsThatOfTheSampleAndAbsentWhereItHasNoBound()
    {
        Near.Within(1E-12, 20, FisherExact.Of(8, 2, 1, 5).OddsRatio!.Value);
        Assert.Null(FisherExact.Of(4, 0, 0, 4).OddsRatio);
    }

    /// <summary>SciPy's fisher_exact, all three alternatives.</summary>
    [Fact]
    public void ProbabilitiesAgreeWithSciPy()
    {
        OracleTable oracle = OracleTable.Read("fisher");
        foreach ((int a, int b, int c, int d) in new[]
        {
            (3, 1, 1, 3), (4, 0, 0, 4), (8, 2, 1, 5), (1, 9, 11, 3), (0, 20, 6, 14), (2, 38, 12, 28), (3, 37, 11, 29), (5, 0, 7, 0), (0, 0, 3, 4),
            (120, 880, 95, 905), (1, 0, 0, 1), (700, 12, 650, 41),
        })
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"{a},{b},{c},{d}");
            FisherResult found = FisherExact.Of(a, b, c, d);

            Near.One(oracle.Value(name, "two"), found.TwoSided, 1E-9);
            Near.One(oracle.Value(name, "greater"), found.Greater, 1E-9);
            Near.One(oracle.Value(name, "less"), found.Less, 1E-9);
        }
    }

    [Fact]
    public void TheSmallestProbabilityIsThatOfTheMostUnevenTable()
    {
        Near.Within(1E-12, 2.0 / 70, FisherExact.Of(3, 1, 1, 3).SmallestTwoSided);
        Near.Within(1E-12, 1, FisherExact.Of(5, 0, 7, 0).SmallestTwoSided);
        Near.Within(1E-12, 1, FisherExact.Of(1, 0, 0, 1).SmallestTwoSided);
    }

    [Fact]
    public void TurningTheTableKeepsTheTwoSidedProbability() => Law.Holds(
        Gen.Int[0, 30].Array[4],
        300,
        t =>
        {
            double found = FisherExact.Of(t[0], t[1], t[2], t[3]).TwoSided;
            Near.Within(1E-10, found, FisherExact.Of(t[2], t[3], t[0], t[1]).TwoSided);
            Near.Within(1E-10, found, FisherExact.Of(t[1], t[0], t[3], t[2]).TwoSided);
            Near.Within(1E-10, found, FisherExact.Of(t[0], t[2], t[1], t[3]).TwoSided);
            Assert.True(found >= FisherExact.Of(t[0], t[1], t[2], t[3]).SmallestTwoSided - 1E-12);
        });

    [Fact]
    public void NegativeCountsAreRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => FisherExact.Of(1, 2, -1, 4));

    /// <summary>By hand: 3 x 5 over 2 x 4; without one of the two below there is no ratio.</summary>
    [Fact]
    public void TheOddsRatioIsTheCrossProduct()
    {
        Near.Within(1E-15, 15 / 8.0, FisherExact.Of(3, 2, 4, 5).OddsRatio!.Value);
        Assert.Null(FisherExact.Of(3, 0, 4, 5).OddsRatio);
        Assert.Null(FisherExact.Of(3, 2, 0, 5).OddsRatio);
    }

    [Theory]
    [InlineData(-1, 2, 3, 4)]
    [InlineData(1, -2, 3, 4)]
    [InlineData(1, 2, -3, 4)]
    [InlineData(1, 2, 3, -4)]
    public void CountsBelowZeroAreRefused(int a, int b, int c, int d) => Assert.Throws<ArgumentOutOfRangeException>(() => FisherExact.Of(a, b, c, d));
}
