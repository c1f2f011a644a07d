using System.Globalization;
using ChannelAudit.Measures;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Raters;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Signals.Statistics;
using ScottPlot;

namespace ChannelAudit.Reports.Figures;

/// <summary>The picture of single measures against people's labels: for each, what share of people's rejects every limit finds, and at which price.</summary>
public static class RaterCurves
{
    private const int Columns = 3;
    private const int Rows = 2;

    /// <summary>Draws it as a PNG; the same labels and size give the same bytes.</summary>
    /// <param name="set">Labels with at least one curve.</param>
    /// <param name="size">Width and height.</param>
    /// <exception cref="ArgumentException">When there is no curve.</exception>
    public static byte[] Render(RatedSet set, FigureSize size) => Png.Of(Compose(set, size));

    /// <summary>Lays it out without drawing it.</summary>
    internal static Picture Compose(RatedSet set, FigureSize size)
    {
        ArgumentNullException.ThrowIfNull(set);
        if (set.Curves.IsEmpty)
        {
            throw new ArgumentException("There is no curve: people reject all, or none.", nameof(set));
        }

        RibbonScale scale = new(size);
        Picture picture = new(size.Width, size.Height);
        float top = DrawHead(picture, scale, set, size.Width);
        Area body = Area.Between(scale.Margin, top, size.Width - scale.Margin, size.Height - (scale.Margin / 2));
        for (int place = 0; place < Math.Min(Columns * Rows, set.Curves.Length); place++)
        {
            float width = (body.Width - ((Columns - 1) * 2 * scale.Gap)) / Columns;
            float height = (body.Height - (2 * scale.Gap)) / Rows;
            Area outer = new(body.Left + (place % Columns * (width + (2 * scale.Gap))), body.Top + (place / Columns * (height + (2 * scale.Gap))), width, height);
            DrawCurve(picture, scale, set.Curves[place], outer);
        }

        return picture;
    }

    private static float DrawHead(Picture picture, RibbonScale scale, RatedSet set, float width)
    {
        float room = width - (2 * scale.Margin);
        float y = MathF.Round(scale.Margin * 0.6f);
        string shown = set.Curves.Length > Columns * Rows ? $", the {(Columns * Rows).Plain()} that tell most" : string.Empty;
        string[] words =
        [
            "Upwards: share of what people reject that the measure would find. To the right: share of the rest that it would call too."
            + " Along the diagonal it tells nothing.",
            "Disc: the reject limit in force, alone. "
            + (set.Curves.Any(curve => curve.Best is not null)
                ? "Triangle: the limit that would agree best with these labels; it was chosen on them and must be judged on other recordings."
                : $"No limit is named: it takes {RatedSet.LeastLabels.Plain()} labels of each kind."),
        ];
        string title = $"Each measure alone against people's labels of {RaterTables.Code(set.Kind)}{shown}";
        foreach ((string text, TextStyle style) in words.Select(text => (text, scale.Words)).Prepend((title, scale.Title)))
        {
            foreach (string part in TextMeasure.Wrap(text, style, room, 2))
            {
                picture.Text(part, style, scale.Margin, y);
                y += TextMeasure.LineHeight(style);
            }
        }

        return y + scale.Gap;
    }

    private static void DrawCurve(Picture picture, RibbonScale scale, MeasureAgainstPeople curve, Area outer)
    {
        string labels = $"{curve.Labels.Reject.Plain()} reject, {curve.Labels.Other.Plain()} other";
        Panel panel = new(picture, scale.Note, outer, string.Create(CultureInfo.InvariantCulture, $"{curve.Measure.Name}: area {curve.Area:F2} ({labels})"));
        float edge = Math.Max(4, 6 * scale.Unit);
        ValueAxis across = new(0, 1, panel.Field.Left + edge, panel.Field.Right - 1 - edge);
        ValueAxis up = new(0, 1, panel.Field.Bottom - 1 - edge, panel.Field.Top + edge);
        panel.DrawLeft(up);
        panel.DrawBelow(across.Ticks(3 * TextMeasure.LineHeight(scale.Note)).Select(tick => (across.At(tick.Value), tick.Text)));
        picture.Line(across.At(0), up.At(0), across.At(1), up.At(1), Inks.Sketch, 1.5f, Dash.Dashed);
        picture.Path([.. curve.Points.Select(point => At(point.Counts, across, up))], Inks.PassLine, Math.Max(2, 2.5f * scale.Unit));
        float size = Math.Max(9, 13 * scale.Unit);
        List<(string Text, Action<Pixel> Sign)> notes = [];
        if (curve.Best is { } best)
        {
            DrawTriangle(picture, At(best.Counts, across, up), size);
            notes.Add(($"best here {Limit(curve.Measure, best.Limit)}", point => DrawTriangle(picture, point, size * 0.8f)));
        }

        if (curve is { AtLimitInForce: { } counts, LimitInForce: { } limit })
        {
            DrawDisc(picture, At(counts, across, up), size);
            notes.Add(($"in force {Limit(curve.Measure, limit)}", point => DrawDisc(picture, point, size * 0.8f)));
        }

        DrawNotes(picture, scale, panel, notes, size);
    }

    // The triangle is the larger: where both limits do the same the disc lies on it, and both are seen.
    private static void DrawTriangle(Picture picture, Pixel point, float size) => picture.Stamps(
        [point], [new Pixel(0, -size), new Pixel(size, size * 0.8f), new Pixel(-size, size * 0.8f)], size, Inks.QuestionableFill, Inks.QuestionableLine);

    private static void DrawDisc(Picture picture, Pixel point, float size) => picture.Stamps([point], [], size * 0.9f, Inks.RejectFill, Inks.Paper);

    // In the lower right corner, where a curve that tells anything has nothing.
    private static void DrawNotes(Picture picture, RibbonScale scale, Panel panel, List<(string Text, Action<Pixel> Sign)> notes, float size)
    {
        float line = TextMeasure.LineHeight(scale.Note) * 1.2f;
        for (int i = 0; i < notes.Count; i++)
        {
            string text = TextMeasure.Fit(notes[i].Text, scale.Note, panel.Field.Width - (4 * size));
            float top = panel.Field.Bottom - ((notes.Count - i) * line) - size;
            float left = panel.Field.Right - TextMeasure.Width(text, scale.Note) - size;
            picture.Fill(Area.Between(left - (2.2f * size), top, panel.Field.Right - size + 3, top + line), Inks.Ribbon);
            picture.Text(text, scale.Note, MathF.Round(left), MathF.Round(top));
            notes[i].Sign(new Pixel(left - (1.2f * size), top + (TextMeasure.LineHeight(scale.Note) / 2)));
        }
    }

    private static string Limit(MeasureDefinition measure, double limit) =>
        $"{(measure.Sense == LimitSense.AtMost ? "\u2264" : "\u2265")} {Quantities.WithUnit(limit, measure.Unit)}";

    private static Pixel At(DetectionCounts counts, ValueAxis across, ValueAxis up) =>
        new(across.At(1 - (counts.Specificity ?? 1)), up.At(counts.Sensitivity ?? 0));
}
