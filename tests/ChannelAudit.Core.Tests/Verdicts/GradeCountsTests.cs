using ChannelAudit.Findings;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Verdicts;

/// <summary>Counting verdicts, and the order in which reasons are listed.</summary>
public sealed class GradeCountsTests
{
    [Fact]
    public void CountsAddUp()
    {
        GradeCounts counts = new GradeCounts(1, 2, 4).Plus(new GradeCounts(10, 20, 40));

        Assert.Equal(new GradeCounts(11, 22, 44), counts);
        Assert.Equal(77, counts.Total);
        Assert.Equal(new GradeCounts(1, 2, -6), new GradeCounts(2, 4, 2).Minus(new GradeCounts(1, 2, 8)));
        Assert.Equal(new GradeCounts(2, 2, 4), new GradeCounts(1, 2, 4).Plus(Grade.Pass));
        Assert.Equal(new GradeCounts(1, 3, 4), new GradeCounts(1, 2, 4).Plus(Grade.Questionable));
        Assert.Equal(new GradeCounts(1, 2, 5), new GradeCounts(1, 2, 4).Plus(Grade.Reject));
    }

    [Fact]
    public void AReasonStandsOnceWhereItsWorstGradePutsIt() => Assert.Equal(
        ["pops", "bridge", "drift"],
        ReasonOrder.Of([("drift", Grade.Questionable), ("pops", Grade.Questionable), ("bridge", Grade.Questionable), ("pops", Grade.Reject), ("clipping", Grade.Pass)]),
        StringComparer.Ordinal);

    [Fact]
    public void WhatWasNotAssessedStandsOnceWithItsFirstCause() => Assert.Equal<NotAssessed>(
        [new NotAssessed("bridge", "c"), new NotAssessed("drift", "a")],
        ReasonOrder.Of([new NotAssessed("drift", "a"), new NotAssessed("drift", "b"), new NotAssessed("bridge", "c")]));

    [Fact]
    public void NothingGivesNothing()
    {
        Assert.Empty(ReasonOrder.Of(Array.Empty<NotAssessed>()));
        Assert.Empty(ReasonOrder.Of(Array.Empty<(string, Grade)>()));
    }
}
