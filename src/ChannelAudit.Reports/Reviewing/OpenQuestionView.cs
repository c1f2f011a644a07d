namespace ChannelAudit.Reports.Reviewing;

/// <summary>What could not be judged, as the page says it.</summary>
/// <param name="Name">What it would have been.</param>
/// <param name="Cause">Why not.</param>
public sealed record OpenQuestionView(string Name, string Cause);
