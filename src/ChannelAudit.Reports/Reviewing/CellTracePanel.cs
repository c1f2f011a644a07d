using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>One channel of a cell's picture: its trace around its level, the scoring window lighter and between two lines; over the cell's own channel its findings.</summary>
internal static class CellTracePanel
{
    private const float GapSpacing = 6;
    private const string Nothing = "nothing stored";

    // A rail is drawn when it is not much farther away than the largest peak.
    private const double RailFrom = 1.3;
    private const double Air = 1.1;

    /// <summary>Draws the panel.</summary>
    /// <param name="pen">With what.</param>
    /// <param name="scene">What is shown.</param>
    /// <param name="place">Which of its traces; the first is the cell's own.</param>
    /// <param name="outer">All the room there is.</param>
    /// <param name="hasTimes">Whether the times stand below.</param>
    public static void Draw(CellPen pen, CellScene scene, int place, Area outer, bool hasTimes)
    {
        CellTrace trace = scene.Traces[place];
        bool isOwn = place == 0;
        float above = isOwn ? CellMarkLanes.Height(pen, scene) : 0;
        Area field = pen.FieldIn(outer, hasTimes, above);
        TraceRange range = RangeOf(scene, trace, isOwn);
        ValueAxis values = new(-range.Reach, range.Reach, field.Bottom - pen.Scale, field.Top);
        LaneScale scale = range.IsFlat ? LaneScale.None : LaneScale.Of(values, range.Reach, field.Height, pen.LineHeight);
        TimeAxis times = new(scene.FromS - scene.ZeroS, scene.ToS - scene.ZeroS, field.Left, field.Right) { IsClock = scene.IsClock };
        float X(double seconds) => times.X(seconds - scene.ZeroS);
        pen.Heading(outer, trace.Name, Words(scene, trace, (range, scale), isOwn));
        pen.Picture.Fill(field, pen.Inks.Field);
        pen.Picture.Fill(Area.Between(X(scene.WindowFromS), field.Top, X(scene.WindowToS), field.Bottom), pen.Inks.Window);
        if (isOwn)
        {
            CellMarkLanes.DrawTints(pen, scene, field, times);
            CellMarkLanes.Draw(pen, scene, field, times);
        }

        pen.Values(field, values, scale);
        pen.Below(field, times.Ticks(pen.Note).Select(tick => (times.X(tick.Seconds), tick.Text)), hasTimes);
        TraceBars.Draw(pen.Picture, field, trace.Excerpt.Trace, values, _ => trace.Excerpt.Level, pen.Inks.Ink);
        foreach (float y in (isOwn ? Rails(scene, trace, range) : []).Select(values.At))
        {
            pen.Picture.Line(field.Left, MathF.Round(y), field.Right, MathF.Round(y), pen.Inks.Reject, 2 * pen.Scale, Dash.Dashed);
        }

        foreach (double edge in new[] { scene.WindowFromS, scene.WindowToS }.Where(edge => edge > scene.FromS && edge < scene.ToS))
        {
            pen.Picture.Line(X(edge), field.Top, X(edge), field.Bottom, pen.Inks.Edge, 2 * pen.Scale, Dash.Dashed);
        }

        DrawGaps(pen, field, trace.Excerpt.Trace);
    }

    private static string Words(CellScene scene, CellTrace trace, (TraceRange Range, LaneScale Scale) drawn, bool isOwn)
    {
        TraceRange range = drawn.Range;
        string unit = trace.Unit.Length > 0 ? trace.Unit : "raw codes";
        string around = isOwn && scene.Behind is { } behind ? $"behind {behind}" : $"{(range.IsFlat ? "flat at" : "around")} {Quantities.Short(trace.Excerpt.Level)}";
        string cut = range.IsCut ? $"; peaks up to {Quantities.Short(range.Largest)} are cut off" : string.Empty;
        string rails = isOwn && Rails(scene, trace, range).Any() ? "; broken line: limit of the input" : string.Empty;
        return $"{unit}{drawn.Scale.Words}, {around}{cut}{rails}";
    }

    // A rail that the trace comes near to is in view.
    private static TraceRange RangeOf(CellScene scene, CellTrace trace, bool isOwn)
    {
        TraceRange range = TraceRange.Of(trace.Excerpt.Trace, _ => trace.Excerpt.Level);
        double farthest = isOwn && !range.IsCut
            ? Rails(scene, trace).Select(Math.Abs).Where(rail => rail <= RailFrom * range.Largest).DefaultIfEmpty(0).Max()
            : 0;
        return range with { Reach = Math.Max(range.Reach, Air * farthest) };
    }

    private static IEnumerable<double> Rails(CellScene scene, CellTrace trace) => scene.Rails.Select(rail => rail - trace.Excerpt.Level);

    private static IEnumerable<double> Rails(CellScene scene, CellTrace trace, TraceRange range) =>
        Rails(scene, trace).Where(rail => Math.Abs(rail) <= range.Reach);

    // It must not look like a quiet signal.
    private static void DrawGaps(CellPen pen, Area field, Trace trace)
    {
        float column = field.Width / trace.Columns;
        for (int from = 0; from < trace.Columns; from++)
        {
            int to = from;
            while (to < trace.Columns && double.IsNaN(trace.Least[to]))
            {
                to++;
            }

            if (to > from)
            {
                DrawGap(pen, Area.Between(field.Left + (from * column), field.Top, field.Left + (to * column), field.Bottom));
                from = to;
            }
        }
    }

    private static void DrawGap(CellPen pen, Area box)
    {
        pen.Picture.Uprights(box, pen.Inks.Gap, GapSpacing * pen.Scale);
        TextStyle style = pen.Note with { Color = pen.Inks.Ink };
        float width = TextMeasure.Width(Nothing, style) + (12 * pen.Scale);
        if (width <= box.Width && pen.LineHeight <= box.Height)
        {
            pen.Picture.Fill(Area.Around(box.CentreX, box.CentreY, width, pen.LineHeight), pen.Inks.Field);
            pen.Picture.TextAround(Nothing, style, box.CentreX, box.CentreY);
        }
    }
}
