using ChannelAudit.Calibration.Running;
using ChannelAudit.Calibration.Study;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ScottPlot;

namespace ChannelAudit.Calibration.Report;

/// <summary>The detection curve of one fault: share found and share rejected against its severity, with intervals; the second generator as marks.</summary>
internal static class CurveFigure
{
    private const int Width = 760;
    private const int Height = 380;
    private const float Mark = 9;

    private static readonly TextStyle Title = new(17, Bold: true, Inks.Ink);
    private static readonly TextStyle Note = new(13, Bold: false, Inks.Ink);
    private static readonly TextStyle Key = new(13, Bold: true, Inks.Ink);

    /// <summary>The bytes of the PNG.</summary>
    public static byte[] Of(Sweep sweep, IReadOnlyList<MeasuredPoint> points)
    {
        Picture picture = new(Width, Height);
        Area field = Area.Between(64, 74, Width - 24, Height - 62);
        DrawFrame(picture, field, sweep);
        MeasuredPoint[] first = [.. points.Where(point => string.Equals(point.Generator, MeasuredPoint.First, StringComparison.Ordinal))];
        MeasuredPoint[] second = [.. points.Where(point => string.Equals(point.Generator, MeasuredPoint.Second, StringComparison.Ordinal) && sweep.SecondSeverities.IsEmpty)];
        DrawCurve(picture, field, sweep, first, count => count.FoundShare, Inks.QuestionableLine, -4);
        DrawCurve(picture, field, sweep, first, count => count.RejectedShare, Inks.RejectLine, 4);
        DrawMarks(picture, field, sweep, second, count => count.FoundShare, Inks.QuestionableLine, -12);
        DrawMarks(picture, field, sweep, second, count => count.RejectedShare, Inks.RejectLine, 12);
        DrawKey(picture, second.Length > 0);
        return Png.Of(picture, isSmall: true);
    }

    private static void DrawFrame(Picture picture, Area field, Sweep sweep)
    {
        picture.Text(sweep.Title, Title, 14, 10);
        for (int percent = 0; percent <= 100; percent += 25)
        {
            float y = Y(field, percent / 100.0);
            picture.Line(field.Left, y, field.Right, y, Inks.Grid, 1);
            string text = FormattableString.Invariant($"{percent} %");
            picture.Text(text, Note, field.Left - 8 - TextMeasure.Width(text, Note), y - (TextMeasure.LineHeight(Note) / 2));
        }

        for (int i = 0; i < sweep.Severities.Length; i++)
        {
            bool isGross = sweep.Gross.Contains(i);
            picture.TextAround(FormattableString.Invariant($"{sweep.Severities[i]}"), isGross ? Key : Note, X(field, sweep, i), field.Bottom + 16);
        }

        string axis = sweep.Gross.IsEmpty ? sweep.Severity : sweep.Severity + "; in bold: gross";
        picture.TextAround(axis, Note, field.CentreX, field.Bottom + 42);
    }

    private static void DrawCurve(Picture picture, Area field, Sweep sweep, MeasuredPoint[] points, Func<PointCount, Share> share, Color color, float aside)
    {
        List<Pixel> line = [];
        foreach (MeasuredPoint point in points)
        {
            Share value = share(point.Count);
            float x = X(field, sweep, point.Point.Position);
            line.Add(new Pixel(x, value.Value is { } known ? Y(field, known) : float.NaN));
            if (value.Value is not null)
            {
                picture.Line(x + aside, Y(field, value.Low), x + aside, Y(field, value.High), color, 3);
            }
        }

        picture.Path(line, color, 2.5f);
    }

    private static void DrawMarks(Picture picture, Area field, Sweep sweep, MeasuredPoint[] points, Func<PointCount, Share> share, Color color, float aside)
    {
        foreach (MeasuredPoint point in points)
        {
            if (share(point.Count).Value is { } value)
            {
                DrawMark(picture, X(field, sweep, point.Point.Position) + aside, Y(field, value), color, isRound: aside < 0);
            }
        }
    }

    private static void DrawMark(Picture picture, float x, float y, Color color, bool isRound)
    {
        if (isRound)
        {
            picture.Disc(Area.Around(x, y, Mark, Mark), Inks.Paper, color, 2);
            return;
        }

        picture.Polygon([new Pixel(x, y - (Mark / 2)), new Pixel(x + (Mark / 2), y), new Pixel(x, y + (Mark / 2)), new Pixel(x - (Mark / 2), y)], Inks.Paper, color, 2);
    }

    private static void DrawKey(Picture picture, bool hasSecond)
    {
        float left = DrawKey(picture, 14, "found, questionable or worse", Inks.QuestionableLine, true, hasSecond);
        left = DrawKey(picture, left + 24, "rejected", Inks.RejectLine, false, hasSecond);
        picture.Text(hasSecond ? "line: first generator; marks: second" : "first generator only", Note, left + 24, 40);
    }

    private static float DrawKey(Picture picture, float left, string text, Color color, bool isRound, bool hasSecond)
    {
        float middle = 40 + (TextMeasure.LineHeight(Note) / 2);
        picture.Line(left, middle, left + 30, middle, color, 3);
        if (hasSecond)
        {
            DrawMark(picture, left + 15, middle, color, isRound);
        }

        return picture.Text(text, Note, left + 38, 40).Right;
    }

    private static float X(Area field, Sweep sweep, int position) => field.Left + (field.Width * (position + 0.5f) / sweep.Severities.Length);

    private static float Y(Area field, double share) => field.Bottom - ((float)share * field.Height);
}
