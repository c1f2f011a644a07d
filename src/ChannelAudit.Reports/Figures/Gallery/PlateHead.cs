using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Synthesis.Gallery;

namespace ChannelAudit.Reports.Figures.Gallery;

/// <summary>The head of a column: whether it is the fault, what was made, and what the audit says of it.</summary>
internal sealed class PlateHead
{
    private const int MostLines = 3;
    private const float BarHeight = 8;

    private readonly GallerySubject _subject;
    private readonly RibbonScale _scale;
    private readonly float _width;
    private readonly int _nameLines;
    private readonly int _verdictLines;

    /// <summary>Finds out how high the heads of a plate are: all are as high as the highest.</summary>
    public PlateHead(GallerySubject subject, RibbonScale scale, ImmutableArray<PlateColumn> columns, float width)
    {
        _subject = subject;
        _scale = scale;
        _width = width;
        _nameLines = columns.Max(column => NameOf(column.Exhibit).Length);
        _verdictLines = columns.Max(column => VerdictOf(column.Exhibit).Length);
    }

    private TextStyle NameStyle => _scale.Words with { Size = 20, Bold = true };

    private TextStyle TagStyle => _scale.Note with { Bold = true, Color = Inks.Ink };

    private float Shape => _scale.Words.Size * 1.2f;

    private float Indent => Shape + _scale.Gap;

    /// <summary>Draws it at the top of a column.</summary>
    /// <returns>Where the rest may begin.</returns>
    public float Draw(Picture picture, GalleryExhibit exhibit, Area column)
    {
        bool isFault = ReferenceEquals(exhibit.Specimen, _subject.Fault);

        // The fault stands under a filled bar, what resembles it under an open one.
        Area bar = new(column.Left, column.Top, column.Width, BarHeight);
        picture.Fill(bar, isFault ? Inks.Ink : Inks.Paper);
        picture.Outline(bar, Inks.Ink, 1.5f);
        float y = bar.Bottom + 4;
        picture.Text(TextMeasure.Fit(PlateWords.Role(_subject, exhibit.Specimen), TagStyle, column.Width), TagStyle, column.Left, y);
        y += TextMeasure.LineHeight(TagStyle);
        y = Lines(picture, NameOf(exhibit), NameStyle, column.Left, y, _nameLines) + 4;

        float line = TextMeasure.LineHeight(_scale.Words);
        VerdictShape.Draw(
            picture, Area.Around(column.Left + (Shape / 2), y + (line / 2), Shape, Shape), PlateWords.Look(exhibit), PlateWords.HasOpenQuestions(exhibit));
        y = Lines(picture, VerdictOf(exhibit), _scale.Words, column.Left + Indent, y, _verdictLines);
        picture.Text(TextMeasure.Fit(PlateWords.Measures(exhibit, _subject.Code), _scale.Note, _width - Indent), _scale.Note, column.Left + Indent, y);
        return y + TextMeasure.LineHeight(_scale.Note);
    }

    private ImmutableArray<string> NameOf(GalleryExhibit exhibit) => TextMeasure.Wrap(exhibit.Specimen.Name, NameStyle, _width, MostLines);

    private ImmutableArray<string> VerdictOf(GalleryExhibit exhibit) => TextMeasure.Wrap(PlateWords.Verdict(exhibit), _scale.Words, _width - Indent, MostLines);

    private static float Lines(Picture picture, ImmutableArray<string> lines, TextStyle style, float left, float top, int room)
    {
        float line = TextMeasure.LineHeight(style);
        for (int i = 0; i < lines.Length; i++)
        {
            picture.Text(lines[i], style, left, top + (i * line));
        }

        return top + (room * line);
    }
}
