using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Verdicts;

/// <summary>When bad trials speak against their channel. Lower ends of Wilson's interval: statsmodels, <c>proportion_confint(method="wilson")</c>.</summary>
public sealed class BadTrialShareTests
{
    private static readonly Criterion Limits = DefaultCriteria.All.For("bad-trials");

    // 2 of 8: 7.15 %, 3 of 8: 13.68 %, 6 of 29: 9.85 %, 7 of 29: 12.22 %, 3 of 16: 6.59 %, 4 of 16: 10.18 %.
    [Theory]
    [InlineData(8, 0, 0, Grade.Pass)]
    [InlineData(6, 2, 0, Grade.Pass)]
    [InlineData(6, 0, 2, Grade.Pass)]
    [InlineData(5, 3, 0, Grade.Questionable)]
    [InlineData(5, 0, 3, Grade.Questionable)]
    [InlineData(0, 8, 0, Grade.Questionable)]
    [InlineData(4, 0, 4, Grade.Reject)]
    [InlineData(2, 3, 3, Grade.Questionable)]
    [InlineData(23, 3, 3, Grade.Pass)]
    [InlineData(22, 4, 3, Grade.Questionable)]
    [InlineData(13, 0, 3, Grade.Pass)]
    [InlineData(12, 0, 4, Grade.Questionable)]
    [InlineData(15, 0, 14, Grade.Questionable)]
    [InlineData(14, 0, 15, Grade.Reject)]
    public void FromEightTrialsOnTheLimitsDecide(int pass, int questionable, int reject, Grade expected) => AssertGrade(new GradeCounts(pass, questionable, reject), expected);

    [Theory]
    [InlineData(1, 0, 0, Grade.Pass)]
    [InlineData(0, 1, 0, Grade.Questionable)]
    [InlineData(0, 0, 1, Grade.Reject)]
    [InlineData(1, 1, 0, Grade.Pass)]
    [InlineData(1, 0, 1, Grade.Pass)]
    [InlineData(1, 1, 1, Grade.Questionable)]
    [InlineData(0, 1, 1, Grade.Questionable)]
    [InlineData(4, 0, 3, Grade.Pass)]
    [InlineData(3, 0, 4, Grade.Questionable)]
    [InlineData(0, 1, 6, Grade.Questionable)]
    [InlineData(0, 0, 7, Grade.Reject)]
    public void OfFewerOnlyAllOrMostSayAnything(int pass, int questionable, int reject, Grade expected) => AssertGrade(new GradeCounts(pass, questionable, reject), expected);

    [Fact]
    public void EvidenceIsTheShareThatPassedItsLimit()
    {
        Assert.Equal<Evidence>([new Evidence("bad_share", 50, "%", 50)], Of(new GradeCounts(4, 0, 4)).Evidence);
        Assert.Equal<Evidence>([new Evidence("bad_share", 100, "%", 100)], Of(new GradeCounts(0, 0, 3)).Evidence);
        Assert.Equal<Evidence>([new Evidence("bad_share", 75, "%", 50)], Of(new GradeCounts(1, 2, 1)).Evidence);
        Evidence low = Assert.Single(Of(new GradeCounts(5, 2, 1)).Evidence);
        Assert.Equal(("bad_share_low", "%", 10), (low.Measure, low.Unit, low.Limit));
        Assert.Equal(13.684428582359736, low.Value, 9);
    }

    [Fact]
    public void WhatPassesHasNeitherEvidenceNorReasons()
    {
        (Grade grade, ImmutableArray<Evidence> evidence, ImmutableArray<string> reasons) = BadTrialShare.Of(
            [.. Enumerable.Range(1, 8).Select(n => n == 8 ? JudgedCase.Cell(n, Grade.Reject, "drift") : JudgedCase.Cell(n, Grade.Pass))], DefaultCriteria.All);

        Assert.Equal(Grade.Pass, grade);
        Assert.Empty(evidence);
        Assert.Empty(reasons);
    }

    // The commonest first, equals in the fixed order, at most three, none with less than a quarter of the commonest.
    [Theory]
    [InlineData("drift*4", "drift")]
    [InlineData("drift*3 pops*4", "pops,drift")]
    [InlineData("pops*4 clipping*4", "clipping,pops")]
    [InlineData("pops*4 clipping*1", "pops,clipping")]
    [InlineData("pops*5 clipping*1", "pops")]
    [InlineData("pops*4 clipping*4 drift*4 bridge*4", "bridge,clipping,pops")]
    public void TheCommonestReasonsAreNamed(string given, string named)
    {
        ImmutableArray<CellResult> cells =
        [
            .. given.Split(' ').Select(one => one.Split('*')).SelectMany(one => Enumerable.Repeat(one[0], one[1][0] - '0')).Select((reason, i) => JudgedCase.Cell(i + 1, Grade.Reject, reason)),
        ];

        Assert.Equal(named, string.Join(',', BadTrialShare.Of(cells, DefaultCriteria.All).Reasons));
    }

    [Fact]
    public void OnlyTrialsOfTheChannelsGradeNameReasons()
    {
        ImmutableArray<CellResult> cells =
            [.. Enumerable.Range(1, 4).Select(n => JudgedCase.Cell(n, Grade.Reject, "pops", "drift")), .. Enumerable.Range(5, 4).Select(n => JudgedCase.Cell(n, Grade.Questionable, "clipping"))];

        Assert.Equal(["pops", "drift"], BadTrialShare.Of(cells, DefaultCriteria.All).Reasons, StringComparer.Ordinal);
    }

    private static void AssertGrade(GradeCounts trials, Grade expected)
    {
        Assert.Equal(expected, Of(trials).Grade);
        Assert.Equal(expected, BadTrialShare.GradeOf(trials, Limits));
    }

    private static (Grade Grade, ImmutableArray<Evidence> Evidence, ImmutableArray<string> Reasons) Of(GradeCounts trials) => BadTrialShare.Of(
        [.. new[] { (Grade.Pass, trials.Pass), (Grade.Questionable, trials.Questionable), (Grade.Reject, trials.Reject) }
            .SelectMany(one => Enumerable.Repeat(one.Item1, one.Item2))
            .Select((grade, i) => JudgedCase.Cell(i + 1, grade))],
        DefaultCriteria.All);
}
