using ScottPlot;

namespace ChannelAudit.Reports.Figures.Looks;

/// <summary>The colours of all figures.</summary>
/// <remarks>
/// Blue, ochre and plum differ in lightness first (each at least 3 to 1 in contrast to the next), so that they stay apart for colour-blind eyes and on
/// grey paper; shape, height and pattern say the same again.
/// </remarks>
internal static class Inks
{
    public static Color Paper { get; } = Color.FromHex("#FFFFFF");

    public static Color Ink { get; } = Color.FromHex("#1B2A41");

    public static Color Muted { get; } = Color.FromHex("#556070");

    public static Color Grid { get; } = Color.FromHex("#DFE4EA");

    /// <summary>Lines of a sketch, which stand back behind everything that is said.</summary>
    public static Color Sketch { get; } = Color.FromHex("#AEB9C6");

    public static Color Ribbon { get; } = Color.FromHex("#F4F6F8");

    public static Color PassFill { get; } = Color.FromHex("#CFE0F0");

    public static Color PassLine { get; } = Color.FromHex("#2C5F8A");

    public static Color QuestionableFill { get; } = Color.FromHex("#F7E6BC");

    public static Color QuestionableLine { get; } = Color.FromHex("#A06A0C");

    public static Color RejectFill { get; } = Color.FromHex("#3D1146");

    public static Color RejectLine { get; } = Color.FromHex("#3D1146");

    public static Color RejectTint { get; } = Color.FromHex("#E9DCEC");

    public static Color OpenLine { get; } = Color.FromHex("#6B7686");
}
