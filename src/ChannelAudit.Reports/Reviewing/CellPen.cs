using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>What the parts of a cell's picture are drawn with.</summary>
/// <param name="Picture">Where to.</param>
/// <param name="Inks">The colours.</param>
/// <param name="Note">The text of axes.</param>
/// <param name="Scale">Pixels of the screen to one of the page.</param>
internal sealed record CellPen(Picture Picture, CellInks Inks, TextStyle Note, int Scale)
{
    /// <summary>Numbers on the left are at least so many lines of text apart.</summary>
    public const float TickLines = 1.6f;

    /// <summary>The height of a line of text.</summary>
    public float LineHeight => TextMeasure.LineHeight(Note);

    /// <summary>Room for numbers on the left of a field.</summary>
    public float AxisWidth => TextMeasure.Width("-0000", Note) + (8 * Scale);

    /// <summary>The field below a heading.</summary>
    /// <param name="outer">All the room there is.</param>
    /// <param name="hasTimes">Whether there is a line of text below the field.</param>
    /// <param name="above">Room between heading and field.</param>
    public Area FieldIn(Area outer, bool hasTimes, float above = 0) => Area.Between(
        outer.Left + AxisWidth, outer.Top + LineHeight + (2 * Scale) + above, outer.Right, outer.Bottom - (hasTimes ? LineHeight + (4 * Scale) : 2 * Scale)).Snapped();

    /// <summary>A heading.</summary>
    /// <param name="outer">All the room there is.</param>
    /// <param name="name">What stands in bold.</param>
    /// <param name="words">What follows it.</param>
    public void Heading(Area outer, string name, string words)
    {
        TextStyle bold = Note with { Bold = true, Color = Inks.Ink };
        Area title = Picture.Text(TextMeasure.Fit(PlainText.Of(name), bold, outer.Width), bold, outer.Left, outer.Top);
        Picture.Text(TextMeasure.Fit(words, Note, Math.Max(0, outer.Right - title.Right - (8 * Scale))), Note, title.Right + (8 * Scale), outer.Top);
    }

    /// <summary>Fine lines and numbers on the left of a field.</summary>
    public void Values(Area field, ValueAxis axis)
    {
        float freeUpTo = field.Bottom;
        foreach ((double value, string text) in axis.Ticks(TickLines * LineHeight))
        {
            float top = Tick(field, axis.At(value));
            if (top + LineHeight <= freeUpTo)
            {
                Number(field, text, top);
                freeUpTo = top;
            }
        }
    }

    /// <summary>Fine lines and numbers on the left of a lane: at least one value above zero and the same below it.</summary>
    public void Values(Area field, ValueAxis axis, LaneScale scale)
    {
        if (scale.Pair is not { } pair)
        {
            Values(field, axis);
            return;
        }

        float zero = Tick(field, axis.At(0));
        if (pair == 0)
        {
            return;
        }

        float upper = Tick(field, axis.At(pair));
        float lower = Tick(field, axis.At(-pair));
        if (scale.IsInHeading)
        {
            return;
        }

        Number(field, Quantities.Short(pair), upper);
        Number(field, Quantities.Short(-pair), lower);
        if (zero >= upper + LineHeight && zero + LineHeight <= lower)
        {
            Number(field, "0", zero);
        }
    }

    /// <summary>Fine upright lines, and numbers below the field when they are asked for; those that would touch are left out.</summary>
    public void Below(Area field, IEnumerable<(float X, string Text)> ticks, bool hasTimes)
    {
        float freeFrom = float.MinValue;
        foreach ((float x, string text) in ticks)
        {
            float width = TextMeasure.Width(text, Note);
            float left = MathF.Round(Math.Clamp(x - (width / 2), field.Left - (width / 2), Math.Max(field.Left, field.Right - width)));
            if (left < freeFrom)
            {
                continue;
            }

            Picture.Fill(new Area(MathF.Round(x), field.Top, Scale, field.Height), Inks.Grid);
            freeFrom = left + width + (10 * Scale);
            if (hasTimes)
            {
                Picture.Text(text, Note, left, field.Bottom + (4 * Scale));
            }
        }
    }

    /// <summary>Words in the middle of a field that is empty.</summary>
    public void SayNothing(Area field, string why) => Picture.TextAround(TextMeasure.Fit(why, Note, field.Width), Note, field.CentreX, field.CentreY);

    // Where the number of a line would stand.
    private float Tick(Area field, float y)
    {
        Picture.Fill(new Area(field.Left, MathF.Round(y), field.Width, Scale), Inks.Grid);
        return MathF.Round(Math.Clamp(y - (LineHeight / 2), field.Top, Math.Max(field.Top, field.Bottom - LineHeight)));
    }

    private void Number(Area field, string text, float top) =>
        Picture.Text(text, Note, MathF.Round(field.Left - (6 * Scale) - TextMeasure.Width(text, Note)), top);
}
