using ChannelAudit.Verdicts;

namespace ChannelAudit.Lists;

/// <summary>A line of a lab's list of exclusions.</summary>
/// <param name="Place">What is left out.</param>
/// <param name="Reason">Why, in the lab's words, or null.</param>
/// <param name="Verdict">The grade given; <c>reject</c> when the list has no column for it.</param>
public sealed record DeclaredExclusion(ListedPlace Place, string? Reason, Grade Verdict);
