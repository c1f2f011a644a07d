using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Comparing;

/// <summary>What one audit says of a whole channel or of one trial of it.</summary>
internal sealed record JudgedPart
{
    /// <summary>The computed verdict.</summary>
    public required Grade Verdict { get; init; }

    /// <summary>Reason codes, worst first.</summary>
    public required ImmutableArray<string> Reasons { get; init; }

    /// <summary>Codes of what could not be judged.</summary>
    public required ImmutableArray<string> NotAssessed { get; init; }

    /// <summary>Its own measures.</summary>
    public required ImmutableArray<GradedMeasure> Measures { get; init; }

    /// <summary>Those of the baseline.</summary>
    public ImmutableArray<GradedMeasure> BaselineMeasures { get; init; } = [];

    /// <summary>The findings behind the verdict, those carried from the channel included.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>Whether it is the whole channel.</summary>
    public bool IsChannel { get; init; }

    /// <summary>A whole channel.</summary>
    public static JudgedPart Of(ChannelResult channel) => new()
    {
        Verdict = channel.Verdict,
        Reasons = channel.Reasons,
        NotAssessed = Codes(channel.NotAssessed),
        Measures = channel.Measures,
        Findings = channel.Findings,
        IsChannel = true,
    };

    /// <summary>One trial; findings of the channel count where their stretch meets the scoring window.</summary>
    public static JudgedPart Of(ChannelResult channel, CellResult cell, Trial trial) => new()
    {
        Verdict = cell.Verdict,
        Reasons = cell.Reasons,
        NotAssessed = Codes(cell.NotAssessed),
        Measures = cell.Measures,
        BaselineMeasures = cell.BaselineMeasures,
        Findings =
        [
            .. cell.Findings,
            .. channel.Findings.Where(finding => finding.FromS < (double)trial.WindowToS && finding.ToS > (double)trial.WindowFromS),
        ],
    };

    /// <summary>Whether two audits say the same of it.</summary>
    public bool SaysTheSameAs(JudgedPart other) => Verdict == other.Verdict
        && Reasons.ToHashSet(StringComparer.Ordinal).SetEquals(other.Reasons)
        && NotAssessed.ToHashSet(StringComparer.Ordinal).SetEquals(other.NotAssessed);

    private static ImmutableArray<string> Codes(ImmutableArray<NotAssessed> missing) =>
        [.. missing.Select(one => one.Reason).Distinct(StringComparer.Ordinal)];
}
