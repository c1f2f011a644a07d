using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>One part of a sheet: a heading that says what it shows, and a field with an axis on the left and one below.</summary>
internal sealed class Panel
{
    private const float BelowHeading = 4;

    private readonly Picture _picture;
    private readonly TextStyle _style;

    /// <summary>Draws the heading and the field's ground.</summary>
    /// <param name="picture">Where to.</param>
    /// <param name="subject">For sizes.</param>
    /// <param name="outer">All the room there is.</param>
    /// <param name="heading">What it shows.</param>
    /// <param name="hasTimes">Whether there is a line of text below the field.</param>
    public Panel(Picture picture, SheetSubject subject, Area outer, string heading, bool hasTimes = true)
        : this(picture, subject.Note, outer, heading, hasTimes)
    {
    }

    /// <summary>Draws the heading and the field's ground.</summary>
    /// <param name="picture">Where to.</param>
    /// <param name="note">The text of headings and axes.</param>
    /// <param name="outer">All the room there is.</param>
    /// <param name="heading">What it shows.</param>
    /// <param name="hasTimes">Whether there is a line of text below the field.</param>
    public Panel(Picture picture, TextStyle note, Area outer, string heading, bool hasTimes = true)
    {
        _picture = picture;
        _style = note;
        TextStyle bold = _style with { Bold = true, Color = Inks.Ink };
        float line = TextMeasure.LineHeight(_style);
        picture.Text(TextMeasure.Fit(heading, bold, outer.Width), bold, outer.Left, outer.Top);
        Field = Area.Between(outer.Left + AxisWidth(_style), outer.Top + line + BelowHeading, outer.Right, outer.Bottom - (hasTimes ? line + 4 : 2)).Snapped();
        picture.Fill(Field, Inks.Ribbon);
    }

    /// <summary>Where the drawing goes.</summary>
    public Area Field { get; }

    /// <summary>An axis of values from the field's lower to its upper edge.</summary>
    public ValueAxis Upwards(double from, double to, bool isLog = false) => new(from, to, Field.Bottom - 1, Field.Top, isLog);

    /// <summary>The same, but ending where the number of its last tick has room below the heading.</summary>
    public ValueAxis UpwardsBelowHeading(double from, double to) =>
        new(from, to, Field.Bottom - 1, Field.Top + (TextMeasure.LineHeight(_style) / 2));

    /// <summary>An axis of values from the field's left to its right edge.</summary>
    public ValueAxis Rightwards(double from, double to) => new(from, to, Field.Left, Field.Right - 1);

    /// <summary>Fine lines and numbers on the left.</summary>
    public void DrawLeft(ValueAxis axis)
    {
        float line = TextMeasure.LineHeight(_style);
        float freeUpTo = Field.Bottom;
        foreach ((double value, string text) in axis.Ticks(1.6f * line))
        {
            float y = axis.At(value);
            _picture.Fill(new Area(Field.Left, MathF.Round(y), Field.Width, 1), Inks.Grid);
            float top = MathF.Round(Math.Clamp(y - (line / 2), Field.Top - BelowHeading, Field.Bottom - line));
            if (top + line <= freeUpTo)
            {
                _picture.Text(text, _style, MathF.Round(Field.Left - 6 - TextMeasure.Width(text, _style)), top);
                freeUpTo = top;
            }
        }
    }

    /// <summary>Numbers or times below; those that would touch are left out.</summary>
    public void DrawBelow(IEnumerable<(float X, string Text)> ticks)
    {
        float freeFrom = float.MinValue;
        foreach ((float x, string text) in ticks)
        {
            float width = TextMeasure.Width(text, _style);
            float left = MathF.Round(Math.Clamp(x - (width / 2), Field.Left - (width / 2), Math.Max(Field.Left, Field.Right - width)));
            if (left >= freeFrom)
            {
                _picture.Fill(new Area(MathF.Round(x), Field.Top, 1, Field.Height + 3), Inks.Grid);
                _picture.Text(text, _style, left, Field.Bottom + 4);
                freeFrom = left + width + 10;
            }
        }
    }

    /// <summary>Words in the middle of an empty field.</summary>
    public void SayNothing(string why)
    {
        string text = TextMeasure.Fit(why, _style, Field.Width - 8);
        _picture.TextAround(text, _style, Field.CentreX, Field.CentreY);
    }

    private static float AxisWidth(TextStyle style) => TextMeasure.Width("-0000", style) + 8;
}
