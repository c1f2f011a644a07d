namespace ChannelAudit.Drafts;

/// <summary>A channel that a setup can name as a site.</summary>
/// <param name="Channel">How a setup names it: its label, and its position where the label stands more than once.</param>
/// <param name="Name">A name for tables and figures made of the label alone, unlike every other one.</param>
public sealed record DraftSite(string Channel, string Name);
