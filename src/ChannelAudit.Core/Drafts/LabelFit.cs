namespace ChannelAudit.Drafts;

/// <summary>A label that a setup names, as it occurs in a recording.</summary>
/// <param name="Place">What names it: <c>rest</c>, or the site whose task it is.</param>
/// <param name="Label">The label.</param>
/// <param name="Trials">How many trials have it.</param>
public sealed record LabelFit(string Place, string Label, int Trials);
