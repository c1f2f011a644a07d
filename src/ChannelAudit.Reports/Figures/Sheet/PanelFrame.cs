namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>What several panels share so that they can be compared: a heading of their own, and one range of values.</summary>
/// <param name="Heading">What it shows.</param>
/// <param name="From">The lowest value.</param>
/// <param name="To">The highest.</param>
internal sealed record PanelFrame(string Heading, double From, double To);
