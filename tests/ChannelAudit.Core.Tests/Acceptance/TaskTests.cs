using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Answers to voluntary contractions. Truth: the amplitudes of the plan, and whose lead goes where.</summary>
public sealed class TaskTests
{
    /// <summary>Rest of 1.5 µV muscle, 0.5 µV electrodes and 0.45 µV amplifier is about 1.7 µV: a contraction of 1 µV stands 10·log10(1/1.7²) = -4.6 dB above it.</summary>
    [Theory]
    [InlineData(801, 25, Grade.Pass)]
    [InlineData(802, 12, Grade.Pass)]
    [InlineData(803, 5, Grade.Questionable)]
    [InlineData(804, 1, Grade.Reject)]
    [InlineData(805, 0, Grade.Reject)]
    public void TheAnswerOfASiteToItsTaskIsGradedByItsSize(ulong seed, double microvolts, Grade expected)
    {
        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(WithContraction(MadeAudit.Session(seed), "cheek", microvolts)));

        Assert.Equal(expected, Worst(result, "cheek"));
        Assert.Equal(Grade.Pass, Worst(result, "brow"));
        Assert.Equal(Grade.Pass, Worst(result, "eye"));
    }

    [Theory]
    [InlineData(811)]
    [InlineData(812)]
    public void ElectrodesOfASiteThatAreJoinedShowNoAnswer(ulong seed)
    {
        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(MadeAudit.Session(seed), ElectrodeBridge.WithinPair("cheek", 0.1)));

        Assert.Equal(Grade.Reject, Worst(result, "cheek"));
    }

    [Theory]
    [InlineData(821)]
    [InlineData(822)]
    public void ExchangedLeadsAreFoundInBothAndNowhereElse(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed);
        SessionPlan swapped = plan with { Trials = [.. plan.Trials.Select(trial => trial with { Activity = [.. trial.Activity.Select(Exchange)] })] };

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(swapped));

        Assert.Equal(
            ["brow", "cheek"],
            result.Channels.Where(channel => channel.Reasons.Contains(ReasonCode.LeadSwap, StringComparer.Ordinal)).Select(channel => channel.Name).Order(StringComparer.Ordinal),
            StringComparer.Ordinal);
        Assert.All(result.Channels.Where(channel => !string.Equals(channel.Name, "eye", StringComparison.Ordinal)), channel => Assert.Equal(Grade.Reject, channel.Verdict));
        Assert.All(MadeAudit.Channel(result, "brow").Cells, cell => Assert.Equal((Grade.Reject, true), (cell.Verdict, cell.Reasons.Contains(ReasonCode.LeadSwap, StringComparer.Ordinal))));
    }

    /// <summary>So strong that each reaches the exchanged neighbour through tissue: the asked site rises too, but never leads.</summary>
    [Theory]
    [InlineData(835)]
    [InlineData(836)]
    public void StrongContractionsOnExchangedLeadsAreASwap(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed);
        plan = plan with
        {
            Faults = [new Crosstalk("cheek", "brow", 0.15), new Crosstalk("brow", "cheek", 0.15)],
            Trials = [.. plan.Trials.Select(trial => trial.Role == Segments.TrialRole.Task
                ? trial with { Activity = [.. trial.Activity.Select(one => Exchange(one) with { RmsUv = 60 })] }
                : trial)],
        };

        RecordingResult result = MadeAudit.Of(plan);

        Assert.All(["cheek", "brow"], site => Assert.Equal(ReasonCode.LeadSwap, MadeAudit.Channel(result, site).Findings[0].Reason));
    }

    /// <summary>A smile that lifts the cheek into the eye, a squeeze that lifts both: answers of others beside the site's own are no swap.</summary>
    [Theory]
    [InlineData(831)]
    [InlineData(832)]
    public void OthersThatAnswerTooAreNoSwap(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed);
        plan = plan with
        {
            Trials = [.. plan.Trials.Select(trial => trial.Role == Segments.TrialRole.Task
                ? trial with { Activity = [.. trial.Activity, new SiteActivity("brow", 40), new SiteActivity("eye", 60)] }
                : trial)],
        };

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(plan));

        Assert.All(result.Channels, channel => Assert.DoesNotContain(ReasonCode.LeadSwap, channel.Reasons, StringComparer.Ordinal));
    }

    /// <summary>Without a task it is still known whether a channel holds anything; below a band that reaches 300 Hz not even that.</summary>
    [Theory]
    [InlineData(2000, false)]
    [InlineData(500, true)]
    public void WhatNobodyAskedForIsNotAssessedOnlyWhereNothingElseCanTell(int rateHz, bool isOpen)
    {
        SessionPlan plan = MadeAudit.Session(841, new Rational(rateHz, 1));
        plan = plan with { Sites = [.. plan.Sites.Select(site => site with { Task = null })] };

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(plan));

        Assert.All(result.Channels, channel => Assert.Equal(isOpen, channel.NotAssessed.Any(open => string.Equals(open.Reason, ReasonCode.WeakResponse, StringComparison.Ordinal))));
        Assert.All(result.Channels.SelectMany(channel => channel.Cells), cell => Assert.DoesNotContain(ReasonCode.WeakResponse, cell.Reasons, StringComparer.Ordinal));
    }

    private static Grade Worst(RecordingResult result, string name)
    {
        ChannelResult channel = MadeAudit.Channel(result, name);
        return channel.Findings.Concat(channel.Cells.SelectMany(cell => cell.Findings))
            .Where(finding => string.Equals(finding.Reason, ReasonCode.WeakResponse, StringComparison.Ordinal))
            .Select(finding => finding.Grade)
            .DefaultIfEmpty(Grade.Pass)
            .Max();
    }

    private static SessionPlan WithContraction(SessionPlan plan, string site, double microvolts) => plan with
    {
        Trials = [.. plan.Trials.Select(trial => trial.Role == Segments.TrialRole.Task
            ? trial with { Activity = [.. trial.Activity.Select(one => string.Equals(one.Site, site, StringComparison.Ordinal) ? one with { RmsUv = microvolts } : one).Where(one => one.RmsUv > 0)] }
            : trial)],
    };

    private static SiteActivity Exchange(SiteActivity one) => one.Site switch
    {
        "cheek" => one with { Site = "brow" },
        "brow" => one with { Site = "cheek" },
        _ => one,
    };
}
