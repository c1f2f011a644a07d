using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>Sizes and styles of the pilot's picture, in pixels: what has to be read from two metres is 28 and more.</summary>
internal static class PilotLook
{
    public const int Width = 1600;
    public const int LeastHeight = 1000;
    public const float Margin = 40;
    public const float Gap = 12;

    /// <summary>Room of the face, from the left margin.</summary>
    public const float FaceWidth = 770;

    /// <summary>Least height of what stands above the list.</summary>
    public const float LeastUpper = 650;

    public static TextStyle Answer { get; } = new(76, true, Inks.Ink);

    public static TextStyle AnswerMore { get; } = new(34, false, Inks.Ink);

    public static TextStyle Title { get; } = new(28, true, Inks.Ink);

    public static TextStyle Step { get; } = new(28, false, Inks.Ink);

    public static TextStyle StepNumber { get; } = new(28, true, Inks.Ink);

    public static TextStyle Name { get; } = new(26, true, Inks.Ink);

    public static TextStyle Value { get; } = new(28, true, Inks.Ink);

    public static TextStyle Words { get; } = new(20, false, Inks.Ink);

    public static TextStyle Note { get; } = new(20, false, Inks.Muted);

    public static TextStyle Kohm { get; } = new(18, true, Inks.Ink);
}
