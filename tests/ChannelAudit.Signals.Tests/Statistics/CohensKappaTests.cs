using ChannelAudit.Signals.Statistics;
using ChannelAudit.Signals.Tests.Oracles;
using CsCheck;

namespace ChannelAudit.Signals.Tests.Statistics;

public sealed class CohensKappaTests
{
    private static readonly Dictionary<string, long[]> Tables = new(StringComparer.Ordinal)
    {
        ["three"] = [88, 10, 2, 14, 40, 6, 18, 10, 12],
        ["two"] = [20, 5, 10, 15],
        ["against"] = [1, 9, 12, 2],
        ["rare"] = [180, 4, 5, 1],
        ["unused"] = [30, 0, 2, 0, 0, 0, 3, 0, 11],
        ["five"] = [9, 3, 1, 0, 0, 2, 14, 4, 1, 0, 0, 3, 21, 5, 1, 0, 1, 6, 17, 2, 0, 0, 1, 4, 8],
    };

    /// <summary>29/59 with its standard error and interval as statsmodels prints them for a published table of three answers.</summary>
    [Fact]
    public void AgreementOfThreeAnswersIsAsPublished()
    {
        KappaResult found = CohensKappa.Of(Tables["three"], 3);

        Near.Within(1E-12, 29.0 / 59, found.Kappa!.Value);
        Near.Within(1E-4, 0.0510, found.StandardError!.Value);
        Near.Within(1E-4, 0.3916, found.Low!.Value);
        Near.Within(1E-4, 0.5915, found.High!.Value);
        Assert.Equal(200, found.Count);
        Assert.Null(found.Undefined);
    }

    /// <summary>By hand: 35 of 50 agree, 25 would by chance; (0.7 - 0.5)/(1 - 0.5).</summary>
    [Fact]
    public void AgreementOfTwoAnswersIsThatWorkedOutByHand()
    {
        KappaResult found = CohensKappa.Of(Tables["two"], 2);

        Near.Within(1E-12, 0.4, found.Kappa!.Value);
        Near.Within(1E-12, 0.7, found.Observed!.Value);
        Near.Within(1E-12, 0.5, found.Expected!.Value);
    }

    /// <summary>By definition: chance alone agrees as well.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    [InlineData(8)]
    public void OneAnswerThroughoutHasNoKappaButACause(int cell)
    {
        foreach (KappaWeights weights in Enum.GetValues<KappaWeights>())
        {
            long[] table = new long[9];
            table[cell] = 40;

            KappaResult found = CohensKappa.Of(table, 3, weights);

            Assert.Equal((null, null, null), (found.Kappa, found.StandardError, found.Low));
            Near.Within(1E-12, 1, found.Expected!.Value);
            Assert.Contains("same one answer", found.Undefined, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void NothingRatedHasACauseToo()
    {
        KappaResult found = CohensKappa.Of(new long[4], 2);

        Assert.Equal((0, null, "nothing was rated by both"), (found.Count, found.Kappa, found.Undefined));
    }

    /// <summary>One gave a single answer, the other two: agreement is what chance gives, and kappa is 0, not undefined.</summary>
    [Fact]
    public void AConstantRaterAgainstAnotherHasKappaZero()
    {
        KappaResult found = CohensKappa.Of([30, 0, 10, 0], 2);

        Near.Within(1E-12, 0, found.Kappa!.Value);
        Assert.Null(found.Undefined);
    }

    [Fact]
    public void PerfectAgreementIsOneAndHasNoIntervalOfNoWidth()
    {
        KappaResult found = CohensKappa.Of([30, 0, 0, 5], 2);

        Near.Within(1E-12, 1, found.Kappa!.Value);
        Assert.Equal((null, null, null, null), (found.StandardError, found.Low, found.High, found.Undefined));
    }

    /// <summary>statsmodels' cohens_kappa(table, wt=...): kappa, std_kappa, kappa_low, kappa_upp; ours cuts the interval at -1 and 1.</summary>
    [Fact]
    public void KappaErrorAndIntervalAgreeWithStatsmodels()
    {
        OracleTable oracle = OracleTable.Read("kappa");
        foreach ((string name, long[] table) in Tables)
        {
            int answers = (int)Math.Round(Math.Sqrt(table.Length));
            foreach (KappaWeights weights in Enum.GetValues<KappaWeights>())
            {
                string one = $"{name}-{(weights == KappaWeights.Linear ? "linear" : "plain")}";
                KappaResult found = CohensKappa.Of(table, answers, weights);

                Near.Within(1E-10, oracle.Value(one, "kappa"), found.Kappa!.Value);
                Near.Within(1E-10, oracle.Value(one, "se"), found.StandardError!.Value);
                Near.Within(1E-10, Math.Max(-1, oracle.Value(one, "low")), found.Low!.Value);
                Near.Within(1E-10, oracle.Value(one, "high"), found.High!.Value);
            }
        }
    }

    [Fact]
    public void ExchangingTheRatersChangesNothingAndTwoAnswersNeedNoWeights() => Law.Holds(
        Gen.Int[1, 40].Array[9],
        200,
        cells =>
        {
            long[] table = [.. cells.Select(cell => (long)cell)];
            long[] turned = [.. Enumerable.Range(0, 9).Select(i => table[(i % 3 * 3) + (i / 3)])];
            KappaResult one = CohensKappa.Of(table, 3, KappaWeights.Linear);
            KappaResult other = CohensKappa.Of(turned, 3, KappaWeights.Linear);
            Near.Within(1E-12, one.Kappa!.Value, other.Kappa!.Value);
            Near.Within(1E-12, one.StandardError!.Value, other.StandardError!.Value);
            Near.Within(1E-12, CohensKappa.Of(table.AsSpan(0, 4), 2).Kappa!.Value, CohensKappa.Of(table.AsSpan(0, 4), 2, KappaWeights.Linear).Kappa!.Value);
        });

    [Fact]
    public void ImpossibleTablesAreRefused()
    {
        Assert.Throws<ArgumentException>(() => CohensKappa.Of([1, 2, 3], 2));
        Assert.Throws<ArgumentException>(() => CohensKappa.Of([1, -2, 3, 4], 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => CohensKappa.Of([1], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => CohensKappa.Of([1, 2, 3, 4], 2, confidence: 1));
    }

    /// <summary>By hand: weights 1, 1/2 and 0; 7 and twice a half of 10 agree, 0.34 and a half of 0.48 would by chance.</summary>
    [Fact]
    public void LinearWeightsCountNeighboursHalf()
    {
        KappaResult found = CohensKappa.Of([2, 1, 0, 0, 3, 1, 1, 0, 2], 3, KappaWeights.Linear);

        Near.Within(1E-12, 0.8, found.Observed!.Value);
        Near.Within(1E-12, 0.58, found.Expected!.Value);
        Near.Within(1E-12, 0.22 / 0.42, found.Kappa!.Value);
        Assert.Throws<ArgumentOutOfRangeException>(() => CohensKappa.Of([2, 1, 0, 3], 2, confidence: 0));
    }
}
