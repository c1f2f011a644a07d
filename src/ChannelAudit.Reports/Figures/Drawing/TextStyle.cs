using ScottPlot;

namespace ChannelAudit.Reports.Figures.Drawing;

/// <summary>How a text is set.</summary>
/// <param name="Size">Font size in pixels.</param>
/// <param name="Bold">Whether in bold.</param>
/// <param name="Color">The colour.</param>
internal readonly record struct TextStyle(float Size, bool Bold, Color Color);
