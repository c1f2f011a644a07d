using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Core.Tests.Criteria;

/// <summary>What twice as much fault is for each kind of limit; worked out by hand on docs/sensitivity.md.</summary>
public sealed class ScaledLimitsTests
{
    [Theory]
    [InlineData("line_rms", 5, 2, 10)]
    [InlineData("line_rms", 5, 0.5, 2.5)]
    [InlineData("line_ratio", 0, 2, 6.0206)]
    [InlineData("contraction_snr", 12, 2, 5.9794)]
    [InlineData("contraction_snr", 12, 0.5, 18.0206)]
    [InlineData("clipped", 1, 2, 2)]
    [InlineData("bad_share", 60, 2, 100)]
    [InlineData("lowfreq_ratio", 1, 2, 4)]
    [InlineData("band_p95", 3, 2, 1.5)]
    [InlineData("headroom", 50, 2, 33.3333)]
    [InlineData("headroom", 50, 0.5, 66.6667)]
    [InlineData("headroom", 20, 2, 11.1111)]
    [InlineData("rest_excess", 1.3, 2, 1.08282)]
    [InlineData("rho_high_rest", 0.40, 2, 0.727273)]
    [InlineData("rho_rest", -0.40, 2, -0.727273)]
    [InlineData("rho_rest", 1, 2, 1)]
    [InlineData("gain_active", 0.50, 2, 0.666667)]
    [InlineData("line_effect", 80, 2, 160)]
    [InlineData("whiteness", 0.5, 2, 0.5)]
    public void ALimitMovesAsItsKindSays(string measure, double limit, double factor, double moved) =>
        Assert.Equal(moved, ScaledLimits.Of(MeasureCatalog.Get(measure), limit, factor), 4);

    [Fact]
    public void AFactorOfOneChangesNothing() => Assert.All(
        Limits(DefaultCriteria.All).Zip(Limits(ScaledLimits.Of(DefaultCriteria.All, 1))),
        pair => Assert.Equal(pair.First.Value, pair.Second.Value, 12));

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.75)]
    [InlineData(1.25)]
    [InlineData(2)]
    public void EveryMovedDefaultCouldBeWrittenIntoAFile(double factor)
    {
        foreach (Criterion criterion in ScaledLimits.Of(DefaultCriteria.All, factor).All)
        {
            Assert.All(Limits(criterion), limit => Assert.True(LimitRange.Contains(MeasureCatalog.Get(limit.Measure), limit.Value), FormattableString.Invariant($"{limit.Measure} {limit.Value}")));
            Assert.Null(LimitOrder.FirstFault(criterion.Questionable, criterion.Reject));
            Assert.Null(LimitOrder.FirstFault(criterion.ChannelQuestionable, criterion.ChannelReject));
        }
    }

    [Fact]
    public void AboveOneEveryLimitIsMilderOrStays() => Assert.All(
        Limits(DefaultCriteria.All).Zip(Limits(ScaledLimits.Of(DefaultCriteria.All, 2))),
        pair =>
        {
            MeasureDefinition measure = MeasureCatalog.Get(pair.First.Measure);
            bool isFixed = measure.Scale == LimitScale.Fixed;
            Assert.Equal(isFixed, pair.First.Value.Equals(pair.Second.Value));
            Assert.True(measure.Reaches(pair.Second.Value, pair.First.Value));
        });

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void AFactorIsAboveZero(double factor) => Assert.Throws<ArgumentOutOfRangeException>(() => ScaledLimits.Of(DefaultCriteria.All, factor));

    private static IEnumerable<Limit> Limits(AuditCriteria criteria) => criteria.All.SelectMany(Limits);

    private static IEnumerable<Limit> Limits(Criterion criterion) =>
        CriterionLevel.All.SelectMany(level => level.Get(criterion)).SelectMany(set => set.Limits);
}
