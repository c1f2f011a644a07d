namespace ChannelAudit.Reports.Figures.Drawing;

/// <summary>A line of text in its place.</summary>
/// <param name="Text">The text as drawn.</param>
/// <param name="Area">The room it takes: its width and the height of a line.</param>
/// <param name="Style">How it is set.</param>
internal sealed record Label(string Text, Area Area, TextStyle Style);
