using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>Sizes that follow the size of the figure; no text is ever below 14 px.</summary>
internal sealed class RibbonScale(FigureSize size)
{
    /// <summary>In pixels.</summary>
    public const float SmallestText = 14;

    /// <summary>1 at 1600 x 900.</summary>
    public float Unit { get; } = Math.Clamp(Math.Min(size.Width / 1600f, size.Height / 900f), 0.5f, 3f);

    public TextStyle Title => new(Math.Max(20, 36 * Unit), Bold: true, Inks.Ink);

    public TextStyle Cause => new(Math.Max(SmallestText, 21 * Unit), Bold: false, Inks.Ink);

    public TextStyle Note => new(Math.Max(SmallestText, 16 * Unit), Bold: false, Inks.Muted);

    public TextStyle Name => new(Math.Max(16, 24 * Unit), Bold: true, Inks.Ink);

    public TextStyle Words => new(Math.Max(SmallestText, 18 * Unit), Bold: false, Inks.Ink);

    public TextStyle Letter => new(Math.Max(SmallestText, 20 * Unit), Bold: true, Inks.Ink);

    public float Margin => Math.Max(12, 32 * Unit);

    public float Gap => Math.Max(4, 8 * Unit);

    public float Shape => Math.Max(14, 28 * Unit);

    public float LeftColumn => size.Width * 0.28f;

    /// <summary>A row with one line of text.</summary>
    public float LowestRow => TextMeasure.LineHeight(Words) + 8;

    /// <summary>From here on a row has several lines of text, lanes and letters.</summary>
    public float TallRow => TextMeasure.LineHeight(Name) + (2 * TextMeasure.LineHeight(Words)) + (2 * Gap);

    /// <summary>From here on blocks of a row with lanes and letters above them are still high enough to tell their heights apart.</summary>
    public float RoomyRow => 1.3f * TallRow;

    public float HighestRow => 250 * Unit;
}
