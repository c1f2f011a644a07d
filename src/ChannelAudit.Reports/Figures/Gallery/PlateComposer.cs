using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Synthesis.Gallery;

namespace ChannelAudit.Reports.Figures.Gallery;

/// <summary>Puts a plate together: title, then a column a specimen with its head, its panels and how the eye knows it.</summary>
internal sealed class PlateComposer
{
    private const float Between = 28;
    private const int MostLines = 4;

    private readonly GallerySubject _subject;
    private readonly RibbonScale _scale;
    private readonly FigureSize _size;
    private readonly ImmutableArray<PlateColumn> _columns;
    private readonly float _width;

    private PlateComposer(GallerySubject subject, ImmutableArray<GalleryExhibit> exhibits, FigureSize size)
    {
        _subject = subject;
        _size = size;
        _scale = new RibbonScale(size);
        _columns = [.. exhibits.Select(exhibit => new PlateColumn(exhibit, _scale))];
        _width = MathF.Floor((size.Width - (2 * _scale.Margin) - (Between * (_columns.Length - 1))) / _columns.Length);
    }

    /// <summary>Lays out the whole plate.</summary>
    public static Picture Compose(GallerySubject subject, ImmutableArray<GalleryExhibit> exhibits, FigureSize size) =>
        new PlateComposer(subject, exhibits, size).Compose();

    private Picture Compose()
    {
        Picture picture = new(_size.Width, _size.Height);
        ImmutableArray<IPlateRow> rows = PlateRows.Of(_subject.View, _columns);
        PlateHead head = new(_subject, _scale, _columns, _width);
        float top = DrawTitle(picture);
        float eyeTop = MathF.Round(_size.Height - (_scale.Margin / 2) - (_columns.Max(column => ByEye(column).Length) * TextMeasure.LineHeight(_scale.Words)));
        for (int i = 0; i < _columns.Length; i++)
        {
            float left = MathF.Round(_scale.Margin + (i * (_width + Between)));
            float panels = head.Draw(picture, _columns[i].Exhibit, Area.Between(left, top, left + _width, eyeTop)) + _scale.Gap;
            DrawRows(picture, _columns[i], rows, Area.Between(left, panels, left + _width, eyeTop - _scale.Gap));
            DrawByEye(picture, _columns[i], left, eyeTop);
        }

        return picture;
    }

    private float DrawTitle(Picture picture)
    {
        float y = MathF.Round(_scale.Margin * 0.5f);
        float room = _size.Width - (2 * _scale.Margin);
        picture.Text(TextMeasure.Fit($"{_subject.Title} ({_subject.Code}), and what resembles it", _scale.Title, room), _scale.Title, _scale.Margin, y);
        y += TextMeasure.LineHeight(_scale.Title);
        foreach (string text in TextMeasure.Wrap(_subject.Telling, _scale.Cause, room, 2))
        {
            picture.Text(text, _scale.Cause, _scale.Margin, y);
            y += TextMeasure.LineHeight(_scale.Cause);
        }

        return y + _scale.Gap;
    }

    private void DrawRows(Picture picture, PlateColumn column, ImmutableArray<IPlateRow> rows, Area area)
    {
        float share = (area.Height - (_scale.Gap * (rows.Length - 1))) / rows.Sum(row => row.Share);
        float top = area.Top;
        foreach (IPlateRow row in rows)
        {
            row.Draw(picture, column, new Area(area.Left, MathF.Round(top), area.Width, MathF.Floor(row.Share * share)));
            top += (row.Share * share) + _scale.Gap;
        }
    }

    private void DrawByEye(Picture picture, PlateColumn column, float left, float top)
    {
        foreach (string text in ByEye(column))
        {
            picture.Text(text, _scale.Words, left, top);
            top += TextMeasure.LineHeight(_scale.Words);
        }
    }

    private ImmutableArray<string> ByEye(PlateColumn column) =>
        TextMeasure.Wrap($"By eye: {column.Exhibit.Specimen.ByEye}", _scale.Words, _width, MostLines);
}
