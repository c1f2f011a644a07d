using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Segments;
using ChannelAudit.Synthesis.Gallery;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Figures.Gallery;

/// <summary>One excerpt of every specimen, around the baseline; two sites lie one above the other.</summary>
internal sealed class ExcerptRow : IPlateRow
{
    private const double Air = 1.08;

    // A rail is drawn when it is not much farther away than the largest peak.
    private const double RailFrom = 1.3;

    // Keeps numbers at the upper edge clear of the heading.
    private const float Edge = 7;
    private const float LeastApart = 5;

    private readonly int _excerpt;
    private readonly double _reach;

    /// <summary>Finds the scale that all columns share.</summary>
    /// <param name="columns">The columns.</param>
    /// <param name="excerpt">Which excerpt.</param>
    /// <param name="share">Its share of the height.</param>
    public ExcerptRow(ImmutableArray<PlateColumn> columns, int excerpt, float share)
    {
        _excerpt = excerpt;
        Share = share;
        double largest = columns.SelectMany(Parts).Max(part => part.Largest);
        double rail = columns.SelectMany(Parts).SelectMany(part => part.Rails).Select(Math.Abs).Where(one => one <= RailFrom * largest).DefaultIfEmpty(0).Max();
        _reach = UpToTwoDigits(Math.Max(Air * Math.Max(largest, rail), 1e-3));
    }

    public float Share { get; }

    public void Draw(Picture picture, PlateColumn column, Area outer)
    {
        Part[] parts = [.. Parts(column)];
        Panel panel = new(picture, column.Subject, outer, Heading(column));
        Trace first = parts[0].Trace;
        TimeAxis times = new(first.FromS, first.ToS, panel.Field.Left, panel.Field.Right);
        panel.DrawBelow(times.Ticks(column.Subject.Note).Select(tick => (times.X(tick.Seconds), tick.Text)));
        float height = panel.Field.Height / parts.Length;
        for (int i = 0; i < parts.Length; i++)
        {
            Area field = new(panel.Field.Left, panel.Field.Top + (i * height), panel.Field.Width, height);
            ValueAxis values = new(-_reach, _reach, field.Bottom - Edge, field.Top + Edge);
            if (parts.Length > 1)
            {
                DrawName(picture, column.Subject, outer.Left, field, parts[i].Name);
            }
            else
            {
                panel.DrawLeft(values);
            }

            DrawRails(picture, column.Subject, field, values, parts[i]);
            DrawPart(picture, column.Subject, field, values, parts[i]);
        }

        DrawWindow(picture, column, panel.Field, times);
    }

    private static double UpToTwoDigits(double value)
    {
        double step = Math.Pow(10, Math.Floor(Math.Log10(value)) - 1);
        return Math.Ceiling(value / step) * step;
    }

    private static void DrawPart(Picture picture, SheetSubject subject, Area field, ValueAxis values, Part part)
    {
        WholeTrace.DrawGaps(picture, field, part.Trace);
        TraceBars.Draw(picture, field, part.Trace, values, _ => part.Level);
        DrawSamples(picture, field, values, part);
        DrawNothing(picture, subject, field, part.Trace);
    }

    // Where samples lie far enough apart, each has its dot.
    private static void DrawSamples(Picture picture, Area field, ValueAxis values, Part part)
    {
        float apart = field.Width / part.Trace.Columns;
        for (int column = 0; apart >= LeastApart && column < part.Trace.Columns; column++)
        {
            if (double.IsFinite(part.Trace.Least[column]))
            {
                float y = values.At(part.Trace.Least[column] - part.Level);
                picture.Disc(Area.Around(field.Left + ((column + 0.5f) * apart), y, 4, 4), Inks.Ink, Inks.Ink, 1);
            }
        }
    }

    private static void DrawNothing(Picture picture, SheetSubject subject, Area field, Trace trace)
    {
        const string text = "nothing stored";
        TextStyle style = subject.Note with { Color = Inks.Ink };
        int[] empty = [.. Enumerable.Range(0, trace.Columns).Where(column => double.IsNaN(trace.Least[column]))];
        float width = TextMeasure.Width(text, style) + 12;
        float column = field.Width / trace.Columns;
        if (empty.Length * column > width)
        {
            Area plate = Area.Around(field.Left + ((empty[0] + empty[^1] + 1) * column / 2), field.CentreY, width, TextMeasure.LineHeight(style) + 4);
            picture.Fill(plate, Inks.Paper);
            picture.TextAround(text, style, plate.CentreX, plate.CentreY);
        }
    }

    private void DrawRails(Picture picture, SheetSubject subject, Area field, ValueAxis values, Part part)
    {
        foreach (double rail in part.Rails.Where(rail => Math.Abs(rail) <= _reach))
        {
            float y = values.At(rail);
            picture.Line(field.Left, y, field.Right, y, Inks.RejectLine, 2, Dash.Dashed);
            if (rail > 0)
            {
                const string text = "limit of the input";
                TextStyle style = subject.Note with { Color = Inks.RejectLine };
                float left = field.Right - TextMeasure.Width(text, style) - 4;
                picture.Text(text, style, MathF.Round(left), MathF.Round(y - TextMeasure.LineHeight(style)));
            }
        }
    }

    // What is drawn where: the trial's edges, and the part that the next row enlarges.
    private void DrawWindow(Picture picture, PlateColumn column, Area field, TimeAxis times)
    {
        Trial trial = column.Exhibit.Recording.Trials.First(one => one.Number == column.Exhibit.Specimen.Trial);
        TextStyle style = column.Subject.Note;
        foreach ((double edgeS, bool isEnd) in new[] { ((double)trial.WindowFromS, false), ((double)trial.WindowToS, true) })
        {
            if (edgeS <= times.FromS || edgeS >= times.ToS)
            {
                continue;
            }

            float x = times.X(edgeS);
            string text = isEnd ? "trial ends" : "trial begins";
            float left = isEnd ? x - TextMeasure.Width(text, style) - 4 : x + 4;
            picture.Line(x, field.Top, x, field.Bottom, Inks.Muted, 2, Dash.Dashed);
            if (left >= field.Left && left + TextMeasure.Width(text, style) <= field.Right)
            {
                picture.Text(text, style, MathF.Round(left), field.Top + 2);
            }
        }

        ImmutableArray<GalleryExcerpt> excerpts = column.Exhibit.Specimen.Excerpts;
        if (_excerpt + 1 < excerpts.Length && excerpts[_excerpt + 1].FromS >= times.FromS && excerpts[_excerpt + 1].ToS <= times.ToS)
        {
            picture.Fill(Area.Between(times.X(excerpts[_excerpt + 1].FromS), field.Bottom - 5, times.X(excerpts[_excerpt + 1].ToS), field.Bottom), Inks.Ink);
        }
    }

    // Two sites share the room of one: their names stand where the numbers would, and the heading says the range.
    private static void DrawName(Picture picture, SheetSubject subject, float left, Area field, string name)
    {
        TextStyle style = subject.Note with { Bold = true, Color = Inks.Ink };
        string text = TextMeasure.Fit(name, style, field.Left - left - 6);
        picture.Fill(new Area(field.Left, MathF.Round(field.CentreY), field.Width, 1), Inks.Grid);
        picture.Text(text, style, left, MathF.Round(field.CentreY - (TextMeasure.LineHeight(style) / 2)));
    }

    private string Heading(PlateColumn column)
    {
        GalleryExcerpt excerpt = column.Exhibit.Specimen.Excerpts[_excerpt];
        double lengthS = excerpt.ToS - excerpt.FromS;
        string length = lengthS < 1 ? $"{Quantities.Short(1000 * lengthS)} ms" : $"{Quantities.Short(lengthS)} s";
        string range = column.Exhibit.Specimen.Partner is null ? string.Empty : $"each from -{Quantities.Short(_reach)} to {Quantities.Short(_reach)} ";
        return $"Trace, {excerpt.Shows}, {length}, {range}{column.Subject.Unit}";
    }

    private IEnumerable<Part> Parts(PlateColumn column) => column.Shown.Zip(column.Exhibit.Traces[_excerpt], Part.Of);

    /// <summary>One site's trace, and the level that is taken off it.</summary>
    private sealed record Part(string Name, Trace Trace, double Level, ImmutableArray<double> Rails)
    {
        public double Largest => Trace.Least.Concat(Trace.Greatest).Where(double.IsFinite).Select(value => Math.Abs(value - Level)).DefaultIfEmpty(0).Max();

        public static Part Of(SheetSubject subject, Trace trace)
        {
            double level = Baseline.At(subject.View, (trace.FromS + trace.ToS) / 2);
            IEnumerable<double> rails = new[] { subject.View.LowerRail, subject.View.UpperRail }.OfType<double>();
            return new Part(subject.Channel.Name, trace, level, [.. rails.Select(rail => rail - level)]);
        }
    }
}
