namespace ChannelAudit.Trends;

/// <summary>What a line is about.</summary>
/// <param name="By">What kind of thing.</param>
/// <param name="Lab">Its lab; null when the setup names none, and for all recordings.</param>
/// <param name="Name">Its id or name; of a lab the lab's, of all recordings <c>all</c>.</param>
public sealed record TrendSubject(TrendBy By, string? Lab, string Name);
