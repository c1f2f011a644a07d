using System.Collections.Immutable;
using ChannelAudit.Detectability;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ScottPlot;

namespace ChannelAudit.Reports.Silence;

/// <summary>Curves of a study of planted faults: the share found and the share rejected against the size, one panel a fault.</summary>
public static class SilenceFigure
{
    private const int MostColumns = 4;

    /// <summary>For reports: 1600 x 1100.</summary>
    public static FigureSize Size { get; } = new(1600, 1100);

    /// <summary>Draws it as a PNG; the same study and size give the same bytes.</summary>
    /// <param name="result">The study.</param>
    /// <param name="size">Width and height.</param>
    public static byte[] Render(DetectabilityResult result, FigureSize size) => Png.Of(Compose(result, size), isSmall: true);

    /// <summary>Lays it out without drawing it.</summary>
    internal static Picture Compose(DetectabilityResult result, FigureSize size)
    {
        Picture picture = new(size.Width, size.Height);
        Scale scale = new(Math.Clamp(Math.Min(size.Width / 1600f, size.Height / 1100f), 0.5f, 2));
        float top = DrawHead(picture, result, scale);
        ImmutableArray<DetectedFault> faults = SilenceWords.Planted(result);
        int columns = Math.Clamp(faults.Length, 1, Math.Min(MostColumns, Math.Max(1, size.Width / 380)));
        int rows = Math.Max(1, (faults.Length + columns - 1) / columns);
        float width = (size.Width - (2 * scale.Margin)) / columns;
        float height = (size.Height - top - (scale.Margin / 2)) / rows;
        for (int i = 0; i < faults.Length; i++)
        {
            DrawPanel(picture, faults[i], new Area(scale.Margin + (i % columns * width), top + (i / columns * height), width - (20 * scale.Unit), height), scale);
        }

        return picture;
    }

    private static float DrawHead(Picture picture, DetectabilityResult result, Scale scale)
    {
        float y = scale.Margin * 0.6f;
        picture.Text(TextMeasure.Fit($"{SilenceWords.Title}: {PlainText.Of(result.Id)}", scale.Title, picture.Width - (2 * scale.Margin)), scale.Title, scale.Margin, y);
        y += TextMeasure.LineHeight(scale.Title) + (4 * scale.Unit);
        float left = scale.Margin;
        foreach ((VerdictLook look, string text) in new[] { (VerdictLook.Questionable, "found, questionable or worse"), (VerdictLook.Reject, "rejected") })
        {
            float line = TextMeasure.LineHeight(scale.Note);
            VerdictShape.Draw(picture, Area.Around(left + (scale.Mark / 2), y + (line / 2), scale.Mark, scale.Mark), look);
            left = picture.Text(text, scale.Key, left + scale.Mark + (6 * scale.Unit), y).Right + (18 * scale.Unit);
        }

        string note = "share of the planted faults, with 95 % intervals; to the right worse";
        picture.Text(TextMeasure.Fit(note, scale.Note, picture.Width - left - scale.Margin), scale.Note, left, y);
        return y + TextMeasure.LineHeight(scale.Note) + (14 * scale.Unit);
    }

    private static void DrawPanel(Picture picture, DetectedFault fault, Area box, Scale scale)
    {
        float line = TextMeasure.LineHeight(scale.Note);
        picture.Text(TextMeasure.Fit(fault.Title, scale.Key, box.Width), scale.Key, box.Left, box.Top);
        string places = $"{fault.Unit}; {Quantities.Many(fault.Points.Max(point => point.Places), "place")}";
        picture.Text(TextMeasure.Fit(places, scale.Note, box.Width), scale.Note, box.Left, box.Top + (1.2f * line));
        Area field = Area.Between(box.Left + (58 * scale.Unit), box.Top + (3.2f * line), box.Right, box.Bottom - (2.4f * line));
        foreach (int percent in new[] { 0, 50, 90, 100 })
        {
            float y = Y(field, percent / 100.0);
            picture.Line(field.Left, y, field.Right, y, percent is 90 ? Inks.Sketch : Inks.Grid, scale.Unit * (percent is 90 ? 1.5f : 1));
            if (percent is not 90)
            {
                string text = $"{percent.Plain()} %";
                picture.Text(text, scale.Small, field.Left - (6 * scale.Unit) - TextMeasure.Width(text, scale.Small), y - (TextMeasure.LineHeight(scale.Small) / 2));
            }
        }

        DrawSizes(picture, fault, field, scale);
        DrawCurve(picture, fault, field, scale, VerdictLook.Questionable);
        DrawCurve(picture, fault, field, scale, VerdictLook.Reject);
    }

    // Only as many sizes are written as have room; the last one always.
    private static void DrawSizes(Picture picture, DetectedFault fault, Area field, Scale scale)
    {
        float taken = float.PositiveInfinity;
        for (int i = fault.Points.Length - 1; i >= 0; i--)
        {
            string text = Quantities.Short(fault.Points[i].Size);
            float half = TextMeasure.Width(text, scale.Small) / 2;
            float x = X(field, fault, i);
            if (x + half + (6 * scale.Unit) < taken)
            {
                picture.TextAround(text, scale.Small, x, field.Bottom + (0.9f * TextMeasure.LineHeight(scale.Small)));
                taken = x - half;
            }
        }
    }

    private static void DrawCurve(Picture picture, DetectedFault fault, Area field, Scale scale, VerdictLook look)
    {
        bool isFound = look == VerdictLook.Questionable;
        Color color = isFound ? Inks.QuestionableLine : Inks.RejectLine;
        float aside = (isFound ? -3 : 3) * scale.Unit;
        List<Pixel> line = [];
        for (int i = 0; i < fault.Points.Length; i++)
        {
            DetectedPoint point = fault.Points[i];
            float x = X(field, fault, i) + aside;
            if (point.Places > 0)
            {
                (double low, double high) = isFound ? point.FoundInterval : point.RejectedInterval;
                picture.Line(x, Y(field, low), x, Y(field, high), color, 2 * scale.Unit);
            }

            line.Add(new Pixel(x, point.Places == 0 ? float.NaN : Y(field, (double)(isFound ? point.Found : point.Rejected) / point.Places)));
        }

        picture.Path(line, color, 2.5f * scale.Unit);
        foreach (Pixel place in line.Where(place => float.IsFinite(place.Y)))
        {
            VerdictShape.Draw(picture, Area.Around(place.X, place.Y, scale.Mark * 0.8f, scale.Mark * 0.8f), look);
        }
    }

    private static float X(Area field, DetectedFault fault, int position) => field.Left + (field.Width * (position + 0.5f) / fault.Points.Length);

    private static float Y(Area field, double share) => field.Bottom - ((float)share * field.Height);

    private sealed record Scale(float Unit)
    {
        public float Margin => 28 * Unit;

        public float Mark => Math.Max(11, 18 * Unit);

        public TextStyle Title => new(Math.Max(17, 30 * Unit), Bold: true, Inks.Ink);

        public TextStyle Key => new(Math.Max(15, 20 * Unit), Bold: true, Inks.Ink);

        public TextStyle Note => new(Math.Max(14, 18 * Unit), Bold: false, Inks.Ink);

        public TextStyle Small => new(Math.Max(14, 16 * Unit), Bold: false, Inks.Ink);
    }
}
