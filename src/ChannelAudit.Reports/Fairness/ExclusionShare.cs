using ChannelAudit.Reports.Methods;

namespace ChannelAudit.Reports.Fairness;

/// <summary>The share that is excluded of one condition, group or channel: a row of <c>fairness-shares.tsv</c>.</summary>
/// <param name="By">What the level is one of.</param>
/// <param name="Of">What is counted.</param>
/// <param name="Channel">The channel, or null for all of them.</param>
/// <param name="Level">The condition, group or channel.</param>
/// <param name="Excluded">Excluded of all.</param>
/// <param name="Participants">Participants that have any.</param>
public sealed record ExclusionShare(Compared By, CountedThing Of, string? Channel, string Level, Share Excluded, int Participants);
