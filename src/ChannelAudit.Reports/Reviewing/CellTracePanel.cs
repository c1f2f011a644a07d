using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>One channel of a cell's picture: its trace around its level, the scoring window lighter and between two lines, findings of the cell's own channel marked.</summary>
internal static class CellTracePanel
{
    private const float GapSpacing = 6;

    /// <summary>Draws the panel.</summary>
    /// <param name="pen">With what.</param>
    /// <param name="scene">What is shown.</param>
    /// <param name="place">Which of its traces; the first is the cell's own.</param>
    /// <param name="outer">All the room there is.</param>
    /// <param name="hasTimes">Whether the times stand below.</param>
    public static void Draw(CellPen pen, CellScene scene, int place, Area outer, bool hasTimes)
    {
        CellTrace trace = scene.Traces[place];
        TraceRange range = TraceRange.Of(trace.Excerpt.Trace, _ => trace.Excerpt.Level);
        Area field = pen.Field(outer, trace.Name, Words(trace, range), hasTimes);
        TimeAxis times = new(scene.FromS - scene.ZeroS, scene.ToS - scene.ZeroS, field.Left, field.Right);
        float X(double seconds) => times.X(seconds - scene.ZeroS);
        pen.Picture.Fill(Area.Between(X(scene.WindowFromS), field.Top, X(scene.WindowToS), field.Bottom), pen.Inks.Window);
        if (place == 0)
        {
            DrawTints(pen, scene, field, X);
        }

        ValueAxis values = new(-range.Reach, range.Reach, field.Bottom - pen.Scale, field.Top);
        pen.Values(field, values);
        pen.Below(field, times.Ticks(pen.Note).Select(tick => (times.X(tick.Seconds), tick.Text)), hasTimes);
        DrawGaps(pen, field, trace.Excerpt.Trace);
        TraceBars.Draw(pen.Picture, field, trace.Excerpt.Trace, values, _ => trace.Excerpt.Level, pen.Inks.Ink);
        foreach (double edge in new[] { scene.WindowFromS, scene.WindowToS }.Where(edge => edge > scene.FromS && edge < scene.ToS))
        {
            pen.Picture.Line(X(edge), field.Top, X(edge), field.Bottom, pen.Inks.Edge, 2 * pen.Scale, Dash.Dashed);
        }

        if (place == 0)
        {
            DrawLetters(pen, scene, field, X);
        }
    }

    private static string Words(CellTrace trace, TraceRange range)
    {
        string unit = trace.Unit.Length > 0 ? trace.Unit : "raw codes";
        string cut = range.IsCut ? $"; peaks up to {Quantities.Short(range.Largest)} are cut off" : string.Empty;
        return $"{unit}, around {Quantities.Short(trace.Excerpt.Level)}{cut}";
    }

    private static void DrawTints(CellPen pen, CellScene scene, Area field, Func<double, float> x)
    {
        foreach (CellMarking mark in Shown(scene).OrderBy(mark => mark.Grade))
        {
            Area box = Area.Between(x(mark.FromS), field.Top, Math.Max(x(mark.ToS), x(mark.FromS) + (3 * pen.Scale)), field.Bottom);
            pen.Picture.Fill(box, mark.Grade == Grade.Reject ? pen.Inks.RejectTint : pen.Inks.QuestionableTint);
            pen.Picture.Fill(new Area(box.Left, field.Top, box.Width, 4 * pen.Scale), LineOf(pen, mark));
        }
    }

    private static void DrawLetters(CellPen pen, CellScene scene, Area field, Func<double, float> x)
    {
        float freeFrom = field.Left;
        foreach (CellMarking mark in Shown(scene).OrderBy(mark => mark.FromS).ThenByDescending(mark => mark.Grade))
        {
            TextStyle style = pen.Note with { Bold = true, Color = LineOf(pen, mark) };
            float width = TextMeasure.Width(mark.Letter, style);
            float left = Math.Clamp(x(mark.FromS) + (3 * pen.Scale), field.Left + 2, Math.Max(field.Left + 2, field.Right - width - 2));
            if (left >= freeFrom)
            {
                pen.Picture.Text(mark.Letter, style, MathF.Round(left), field.Top + (5 * pen.Scale));
                freeFrom = left + width + (4 * pen.Scale);
            }
        }
    }

    private static IEnumerable<CellMarking> Shown(CellScene scene) => scene.Marks.Where(mark => mark.ToS > scene.FromS && mark.FromS < scene.ToS);

    private static ScottPlot.Color LineOf(CellPen pen, CellMarking mark) => mark.Grade == Grade.Reject ? pen.Inks.Reject : pen.Inks.Questionable;

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
                pen.Picture.Uprights(Area.Between(field.Left + (from * column), field.Top, field.Left + (to * column), field.Bottom), pen.Inks.Gap, GapSpacing * pen.Scale);
                from = to;
            }
        }
    }
}
