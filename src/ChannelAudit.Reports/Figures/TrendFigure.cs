using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Trends;
using ChannelAudit.Trends;
using ScottPlot;

namespace ChannelAudit.Reports.Figures;

/// <summary>The picture over all: every measure, four weeks by four weeks, one curve a lab.</summary>
public static class TrendFigure
{
    /// <summary>The name of the file.</summary>
    public const string FileName = "trend.png";

    private const int BinDays = 28;
    private const int Columns = 2;
    private const int Width = 1500;
    private const int PanelHeight = 330;
    private const int MostLabs = 4;

    /// <summary>Draws it as a PNG; the same recordings give the same bytes.</summary>
    public static byte[] Render(TrendReport report) => Png.Of(Compose(report), isSmall: true);

    /// <summary>Lays it out without drawing it.</summary>
    internal static Picture Compose(TrendReport report)
    {
        ImmutableArray<TrendSubject> labs = Labs(report);
        (TrendMeasure Measure, ImmutableArray<TrendValue> Values)[] measures =
            [.. TrendMeasure.All.Where(measure => measure != TrendMeasure.Contact).Select(measure => (measure, TrendValue.Of(report.Sessions, measure))).Where(one => !one.Item2.IsEmpty)];
        RibbonScale scale = new(new FigureSize(Width, 900));
        int rows = (measures.Length + Columns - 1) / Columns;
        Picture picture = new(Width, 130 + (rows * PanelHeight));
        float top = DrawHead(picture, scale, labs);
        float width = (Width - (2 * scale.Margin) - (4 * scale.Gap)) / Columns;
        float height = (picture.Height - top - (scale.Margin / 2)) / rows;
        for (int i = 0; i < measures.Length; i++)
        {
            Area outer = new(scale.Margin + (i % Columns * (width + (4 * scale.Gap))), top + (i / Columns * height), width, height - (2 * scale.Gap));
            DrawPanel(picture, scale, report, labs, measures[i].Measure, measures[i].Values, outer);
        }

        return picture;
    }

    // With more labs than marks one curve over all: the tables have each.
    private static ImmutableArray<TrendSubject> Labs(TrendReport report)
    {
        ImmutableArray<TrendSubject> labs = [.. report.Subjects.Where(subject => subject.By == TrendBy.Lab)];
        return labs.Length is > 0 and <= MostLabs ? labs : [.. report.Subjects.Where(subject => subject.By == TrendBy.Archive)];
    }

    private static float DrawHead(Picture picture, RibbonScale scale, ImmutableArray<TrendSubject> labs)
    {
        float y = MathF.Round(scale.Margin * 0.6f);
        picture.Text("Every measure over time, four weeks by four weeks", scale.Title, scale.Margin, y);
        y += TextMeasure.LineHeight(scale.Title) + 4;
        float left = scale.Margin;
        float line = TextMeasure.LineHeight(scale.Words);
        for (int i = 0; i < labs.Length; i++)
        {
            Mark(picture, i, [new Pixel(left + 8, y + (line / 2))], 14 * scale.Unit);
            string name = labs[i].By == TrendBy.Archive ? "all recordings" : $"lab {labs[i].Name}";
            left = picture.Text(TextMeasure.Fit(name, scale.Words, 220), scale.Words, left + 22, y).Right + 24;
        }

        const string key = "Marks: the middle value, or the share with its 95 % interval (Wilson).";
        picture.Text(TextMeasure.Fit(key, scale.Note, Width - left - scale.Margin), scale.Note, left, y);
        return y + line + (2 * scale.Gap);
    }

    private static void DrawPanel(
        Picture picture, RibbonScale scale, TrendReport report, ImmutableArray<TrendSubject> labs, TrendMeasure measure, ImmutableArray<TrendValue> values, Area outer)
    {
        bool isShare = measure.Scale == TrendScale.Share;
        string unit = isShare ? "%" : measure.Unit switch { "uV" => "\u00B5V", "kohm" => "k\u03A9", var other => other };
        Panel panel = new(picture, scale.Note, outer, $"{TrendWords.Name(measure)}, {unit}");
        DateOnly from = report.Sessions[0].Day!.Value;
        DateOnly to = report.Sessions[^1].Day!.Value;
        (TrendRow Row, double Day)[][] curves = [.. labs.Select(lab => Bins(lab, measure, values, from))];
        double factor = isShare ? 100 : 1;
        double most = curves.SelectMany(curve => curve).Max(point => isShare ? point.Row.High!.Value : point.Row.Value) * factor;
        ValueAxis up = panel.UpwardsBelowHeading(Math.Min(0, curves.SelectMany(curve => curve).Min(point => point.Row.Value)), most * 1.05);
        ValueAxis across = panel.Rightwards(from.DayNumber, to.DayNumber + 7);
        panel.DrawLeft(up);
        panel.DrawBelow(TrendDays.Ticks(from, to).Select(tick => (across.At(tick.Day.DayNumber), tick.Text)));
        for (int i = 0; i < curves.Length; i++)
        {
            Pixel[] points = [.. curves[i].Select(point => new Pixel(across.At(point.Day), up.At(point.Row.Value * factor)))];
            foreach (((TrendRow row, _), Pixel at) in curves[i].Zip(points).Where(_ => isShare))
            {
                picture.Line(at.X, up.At(row.Low!.Value * factor), at.X, up.At(row.High!.Value * factor), Inks.Sketch, 1.5f);
            }

            picture.Path(points, Ink(i), 2 * scale.Unit);
            Mark(picture, i, points, 10 * scale.Unit);
        }
    }

    private static (TrendRow Row, double Day)[] Bins(TrendSubject lab, TrendMeasure measure, ImmutableArray<TrendValue> values, DateOnly from) =>
    [
        .. values.Where(value => value.IsOf(lab)).GroupBy(value => (value.Day.DayNumber - from.DayNumber) / BinDays)
            .Select(bin => (TrendRow.Of(lab, null, measure, [.. bin]), bin.Average(value => (double)value.Day.DayNumber))),
    ];

    private static Color Ink(int place) => place switch
    {
        0 => Inks.PassLine,
        1 => Inks.QuestionableLine,
        2 => Inks.RejectLine,
        _ => Inks.OpenLine,
    };

    // A shape for each, since colours alone do not tell.
    private static void Mark(Picture picture, int place, IReadOnlyList<Pixel> points, float size)
    {
        float half = size / 2;
        Pixel[] corners = place switch
        {
            0 => [],
            1 => [new Pixel(0, -half), new Pixel(half, half), new Pixel(-half, half)],
            2 => [new Pixel(-half, -half), new Pixel(half, -half), new Pixel(half, half), new Pixel(-half, half)],
            _ => [new Pixel(0, -half), new Pixel(half, 0), new Pixel(0, half), new Pixel(-half, 0)],
        };
        picture.Stamps(points, corners, size, Ink(place), Inks.Paper);
    }
}
