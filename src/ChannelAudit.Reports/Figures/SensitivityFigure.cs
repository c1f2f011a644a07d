using System.Collections.Immutable;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;
using ScottPlot;

namespace ChannelAudit.Reports.Figures;

/// <summary>Rejected and questionable trials of a run against the factor on the limits: one panel for all limits together, one for each reason that matters.</summary>
public static class SensitivityFigure
{
    /// <summary>The name of the file.</summary>
    public const string FileName = "sensitivity.png";

    private const int MostReasons = 5;
    private const int Columns = 3;

    /// <summary>For reports: 1500 x 900.</summary>
    public static FigureSize Size { get; } = new(1500, 900);

    /// <summary>Draws it as a PNG; the same counts and size give the same bytes.</summary>
    /// <param name="tally">The run.</param>
    /// <param name="size">Width and height.</param>
    public static byte[] Render(SensitivityTally tally, FigureSize size)
    {
        ArgumentNullException.ThrowIfNull(tally);
        return Png.Of(Compose(tally, size), isSmall: true);
    }

    /// <summary>Lays it out without drawing it.</summary>
    internal static Picture Compose(SensitivityTally tally, FigureSize size)
    {
        Picture picture = new(size.Width, size.Height);
        Scale scale = new(Math.Clamp(Math.Min(size.Width / 1500f, size.Height / 900f), 0.5f, 2));
        float top = DrawHead(picture, tally, scale);
        ImmutableArray<string> reasons = [MovedLimits.AllReasons, .. tally.ReasonsOfTrials.Take(MostReasons)];
        int rows = (reasons.Length + Columns - 1) / Columns;
        int columns = Math.Min(Columns, reasons.Length);
        float width = (size.Width - (2 * scale.Margin)) / columns;
        float height = (size.Height - top - scale.Margin) / rows;
        int most = Math.Max(1, reasons.SelectMany(reason => Factors.Select(factor => tally.Row(reason, factor).Trials)).Max(counts => Math.Max(counts.Reject, counts.Questionable)));
        for (int i = 0; i < reasons.Length; i++)
        {
            DrawPanel(picture, tally, reasons[i], new Area(scale.Margin + (i % columns * width), top + (i / columns * height), width, height), scale, most);
        }

        return picture;
    }

    private static double[] Factors => [.. MovedLimits.Factors.Append(1).Order()];

    private static float DrawHead(Picture picture, SensitivityTally tally, Scale scale)
    {
        GradeCounts now = tally.InForce.Trials;
        float y = scale.Margin * 0.6f;
        picture.Text(SensitivityWords.Title, scale.Title, scale.Margin, y);
        y += TextMeasure.LineHeight(scale.Title) + (4 * scale.Unit);
        string counted = $"of {Quantities.Many(now.Total, "trial")} in {Quantities.Many(tally.Recordings, "recording")}, each counted once a channel; across: how much more fault the limits tolerate";
        float left = scale.Margin;
        foreach ((VerdictLook look, string text) in new[] { (VerdictLook.Reject, "reject"), (VerdictLook.Questionable, "questionable") })
        {
            float line = TextMeasure.LineHeight(scale.Note);
            VerdictShape.Draw(picture, Area.Around(left + (scale.Mark / 2), y + (line / 2), scale.Mark, scale.Mark), look);
            left = picture.Text(text, scale.Key, left + scale.Mark + (6 * scale.Unit), y).Right + (18 * scale.Unit);
        }

        picture.Text(TextMeasure.Fit(counted, scale.Note, picture.Width - left - scale.Margin), scale.Note, left, y);
        return y + TextMeasure.LineHeight(scale.Note) + (14 * scale.Unit);
    }

    private static void DrawPanel(Picture picture, SensitivityTally tally, string reason, Area box, Scale scale, int most)
    {
        float line = TextMeasure.LineHeight(scale.Note);
        picture.Text(TextMeasure.Fit(SensitivityWords.Name(reason), scale.Key, box.Width - scale.Mark), scale.Key, box.Left, box.Top);
        Area field = Area.Between(box.Left + (8 * scale.Unit), box.Top + (3.2f * line), box.Right - (28 * scale.Unit), box.Bottom - (3.2f * line));
        picture.Line(field.Left, field.Bottom, field.Right, field.Bottom, Inks.Muted, scale.Unit * 1.5f);
        double[] factors = Factors;
        foreach (double factor in factors)
        {
            float x = X(field, factor);
            picture.Line(x, field.Top, x, field.Bottom, factor is 1 ? Inks.Sketch : Inks.Grid, scale.Unit * (factor is 1 ? 2 : 1));
            picture.TextAround($"\u00D7{Quantities.Short(factor)}", scale.Note with { Bold = factor is 1 }, x, field.Bottom + (2.1f * line));
        }

        // The larger count is written above its mark, the smaller one below.
        bool[] isRejectAbove = [.. factors.Select(factor => tally.Row(reason, factor).Trials.Reject >= tally.Row(reason, factor).Trials.Questionable)];
        (double Factor, int Count)[] questionable = [.. factors.Select(factor => (factor, tally.Row(reason, factor).Trials.Questionable))];
        (double Factor, int Count)[] rejected = [.. factors.Select(factor => (factor, tally.Row(reason, factor).Trials.Reject))];
        DrawCurve(picture, field, scale, most, questionable, VerdictLook.Questionable, [.. isRejectAbove.Select(isAbove => !isAbove)]);
        DrawCurve(picture, field, scale, most, rejected, VerdictLook.Reject, isRejectAbove);
    }

    private static void DrawCurve(Picture picture, Area field, Scale scale, int most, (double Factor, int Count)[] points, VerdictLook look, bool[] isAbove)
    {
        Color color = look == VerdictLook.Reject ? Inks.RejectLine : Inks.QuestionableLine;
        int inForce = points.First(point => point.Factor is 1).Count;
        Pixel[] places = [.. points.Select(point => new Pixel(X(field, point.Factor), field.Bottom - (field.Height * point.Count / most)))];
        picture.Path(places, color, 3 * scale.Unit);
        for (int i = 0; i < points.Length; i++)
        {
            VerdictShape.Draw(picture, Area.Around(places[i].X, places[i].Y, scale.Mark, scale.Mark), look);
            if (points[i].Factor is 1 || points[i].Count != inForce)
            {
                WriteCount(picture, places[i], points[i].Count, scale, color, isAbove[i]);
            }
        }
    }

    private static void WriteCount(Picture picture, Pixel place, int count, Scale scale, Color color, bool isAbove)
    {
        TextStyle style = scale.Note with { Color = color, Bold = true };
        float line = TextMeasure.LineHeight(style);
        float y = place.Y + ((isAbove ? -1 : 1) * ((scale.Mark / 2) + (line * 0.6f)));
        picture.Fill(Area.Around(place.X, y, TextMeasure.Width(count.Plain(), style) + 4, line * 0.8f), Inks.Paper);
        picture.TextAround(count.Plain(), style, place.X, y);
    }

    // Half and twice are equally far from the limits in force.
    private static float X(Area field, double factor) =>
        field.Left + (field.Width * (0.06f + (0.88f * (float)(Math.Log2(factor / MovedLimits.Factors[0]) / Math.Log2(MovedLimits.Factors[^1] / MovedLimits.Factors[0])))));

    private sealed record Scale(float Unit)
    {
        public float Margin => 28 * Unit;

        public float Mark => Math.Max(11, 18 * Unit);

        public TextStyle Title => new(Math.Max(16, 30 * Unit), Bold: true, Inks.Ink);

        public TextStyle Key => new(Math.Max(15, 22 * Unit), Bold: true, Inks.Ink);

        public TextStyle Note => new(Math.Max(14, 19 * Unit), Bold: false, Inks.Ink);
    }
}
