using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Typefaces;
using SkiaSharp;

namespace ChannelAudit.Reports.Figures.Drawing;

/// <summary>How much room a text takes, and how to make it fit.</summary>
internal static class TextMeasure
{
    private const string Ellipsis = "\u2026";

    /// <summary>Width in pixels.</summary>
    public static float Width(string text, TextStyle style)
    {
        using SKFont font = FigureFont.Create(style.Size, style.Bold);
        return font.MeasureText(text);
    }

    /// <summary>Height of a line in pixels, from the highest to the lowest stroke of the font.</summary>
    public static float LineHeight(TextStyle style) => MathF.Ceiling(style.Size * 1.22f);

    /// <summary>Distance from the top of a line to its baseline in pixels.</summary>
    public static float Ascent(TextStyle style) => style.Size * 0.97f;

    /// <summary>The text, or as much of its beginning as fits, with an ellipsis; empty when not even that fits.</summary>
    public static string Fit(string text, TextStyle style, float width)
    {
        using SKFont font = FigureFont.Create(style.Size, style.Bold);
        if (font.MeasureText(text) <= width)
        {
            return text;
        }

        int low = 0;
        int high = text.Length - 1;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            bool fits = font.MeasureText(Shortened(text, middle)) <= width;
            (low, high) = fits ? (middle, high) : (low, middle - 1);
        }

        string shortened = Shortened(text, low);
        return font.MeasureText(shortened) <= width ? shortened : string.Empty;
    }

    /// <summary>The text in lines that fit, broken between words; the last line ends in an ellipsis when there is more.</summary>
    public static ImmutableArray<string> Wrap(string text, TextStyle style, float width, int lines)
    {
        ImmutableArray<string>.Builder wrapped = ImmutableArray.CreateBuilder<string>();
        string rest = text.Trim();
        while (rest.Length > 0 && wrapped.Count < lines)
        {
            int length = wrapped.Count == lines - 1 ? rest.Length : LengthOfLine(rest, style, width);
            wrapped.Add(Fit(rest[..length].TrimEnd(), style, width));
            rest = rest[length..].TrimStart();
        }

        return wrapped.ToImmutable();
    }

    private static int LengthOfLine(string text, TextStyle style, float width)
    {
        if (Width(text, style) <= width)
        {
            return text.Length;
        }

        int length = 0;
        for (int space = text.IndexOf(' ', StringComparison.Ordinal); space > 0; space = text.IndexOf(' ', space + 1))
        {
            if (Width(text[..space], style) > width)
            {
                break;
            }

            length = space;
        }

        // A single word that is too long is broken where it must be.
        return length > 0 ? length : Math.Max(1, Fit(text, style, width).Length - 1);
    }

    private static string Shortened(string text, int length)
    {
        // Half a surrogate pair is no character.
        int whole = length > 0 && char.IsHighSurrogate(text[length - 1]) ? length - 1 : length;
        return text[..whole].TrimEnd() + Ellipsis;
    }
}
