using System.Collections.Immutable;

namespace ChannelAudit.Trends;

/// <summary>Changes of one subject at one time: what a lab would call one thing that happened.</summary>
/// <param name="Findings">Its changes, the surest first.</param>
/// <param name="PartOf">Position among all stories of the broader one that it is a part of; null for one of its own.</param>
public sealed record TrendStory(ImmutableArray<TrendFinding> Findings, int? PartOf)
{
    /// <summary>What it is about.</summary>
    public TrendSubject Subject => Findings[0].Line.Subject;

    /// <summary>Whether it is bad news; null when neither.</summary>
    public bool? IsWorse => Findings.Select(finding => finding.IsWorse).FirstOrDefault(isWorse => isWorse is not null);
}
