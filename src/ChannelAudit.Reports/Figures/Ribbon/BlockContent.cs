using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>The shape and the letters inside a block, as much of them as fits.</summary>
internal static class BlockContent
{
    private const float Air = 3;
    private const float SmallestShape = 9;

    /// <summary>Draws them; a block that is too small stays empty, its height and fill still speak.</summary>
    public static void Draw(Picture picture, RibbonScale scale, TrialBlock block)
    {
        TextStyle style = LetterStyle(scale, block) with { Color = block.Look == VerdictLook.Reject ? Inks.Paper : Inks.Ink };
        foreach (string letters in Choices(block))
        {
            if (Stacked(picture, scale, block, letters, style) || SideBySide(picture, scale, block, letters, style))
            {
                return;
            }
        }

        if (block.Look is VerdictLook.Questionable or VerdictLook.Reject && block.Letters is [var first, ..] && LetterAlone(picture, block, first, style))
        {
            return;
        }

        // As large as the block allows: a small cross is not seen.
        float shape = Math.Min(scale.Shape, Math.Min(block.Area.Width, block.Area.Height) - (Air + 1));
        if (shape >= SmallestShape)
        {
            Plate(picture, block, Area.Around(block.Area.CentreX, block.Area.CentreY, shape - (2 * Air), shape - (2 * Air)));
            Shape(picture, block, block.Area.CentreX, block.Area.CentreY, shape);
        }
    }

    /// <summary>Whether a block is wide and high enough to hold its first letter.</summary>
    public static bool HoldsLetter(RibbonScale scale, TrialBlock block) =>
        block.Letters.IsEmpty
        || (block.Area.Height >= TextMeasure.LineHeight(LetterStyle(scale, block)) && block.Area.Width >= TextMeasure.Width(block.Letters[0], LetterStyle(scale, block)) + Air);

    // A low block gets the smallest letter that is allowed.
    private static TextStyle LetterStyle(RibbonScale scale, TrialBlock block) =>
        block.Area.Height >= TextMeasure.LineHeight(scale.Letter) ? scale.Letter : scale.Letter with { Size = RibbonScale.SmallestText };

    private static IEnumerable<string> Choices(TrialBlock block)
    {
        for (int count = block.Look is VerdictLook.Pass or VerdictLook.NotAssessed ? 0 : block.Letters.Length; count > 0; count--)
        {
            yield return string.Join(' ', block.Letters.Take(count));
        }
    }

    private static bool Stacked(Picture picture, RibbonScale scale, TrialBlock block, string letters, TextStyle style)
    {
        float width = Math.Max(TextMeasure.Width(letters, style), scale.Shape);
        float line = TextMeasure.LineHeight(style);
        float height = scale.Shape + Air + line;
        if (!Fits(block.Area, width, height))
        {
            return false;
        }

        Plate(picture, block, Area.Around(block.Area.CentreX, block.Area.CentreY, width, height));
        float top = block.Area.CentreY - (height / 2);
        Shape(picture, block, block.Area.CentreX, top + (scale.Shape / 2), scale.Shape);
        picture.TextAround(letters, style, block.Area.CentreX, top + scale.Shape + Air + (line / 2));
        return true;
    }

    private static bool SideBySide(Picture picture, RibbonScale scale, TrialBlock block, string letters, TextStyle style)
    {
        float text = TextMeasure.Width(letters, style);
        float shape = Math.Min(scale.Shape, block.Area.Height - (2 * Air));
        float width = shape + (2 * Air) + text;
        if (shape < SmallestShape || !Fits(block.Area, width, TextMeasure.LineHeight(style) - (2 * Air)))
        {
            return false;
        }

        Plate(picture, block, Area.Around(block.Area.CentreX, block.Area.CentreY, width, TextMeasure.LineHeight(style) - Air));
        float left = block.Area.CentreX - (width / 2);
        Shape(picture, block, left + (shape / 2), block.Area.CentreY, shape);
        picture.TextAround(letters, style, left + shape + (2 * Air) + (text / 2), block.Area.CentreY);
        return true;
    }

    private static bool LetterAlone(Picture picture, TrialBlock block, string letter, TextStyle style)
    {
        float width = TextMeasure.Width(letter, style);
        float height = TextMeasure.LineHeight(style);
        if (block.Area.Height < height || block.Area.Width < width + Air)
        {
            return false;
        }

        Plate(picture, block, Area.Around(block.Area.CentreX, block.Area.CentreY, width, height - Air));
        picture.TextAround(letter, style, block.Area.CentreX, block.Area.CentreY);
        return true;
    }

    private static bool Fits(Area box, float width, float height) => width + (2 * Air) <= box.Width && height + (2 * Air) <= box.Height;

    // On stripes, shape and letters get a plain ground.
    private static void Plate(Picture picture, TrialBlock block, Area box)
    {
        if (block.Look == VerdictLook.Questionable)
        {
            picture.Fill(Area.Between(box.Left - Air, box.Top - Air, box.Right + Air, box.Bottom + Air), Inks.QuestionableFill);
        }
    }

    private static void Shape(Picture picture, TrialBlock block, float centreX, float centreY, float size) => VerdictShape.Draw(
        picture,
        Area.Around(centreX, centreY, size, size),
        block.Look,
        block.HasOpenQuestions,
        onDark: block.Look == VerdictLook.Reject);
}
