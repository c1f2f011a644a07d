using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Trends;
using ChannelAudit.Signals.Trends;
using ChannelAudit.Trends;
using ScottPlot;

namespace ChannelAudit.Reports.Figures;

/// <summary>The picture of one change over time: week by week, with the moving average, what was usual before, and the others.</summary>
public static class TrendStoryFigure
{
    private const int MostPanels = 3;
    private const int Width = 1500;
    private const int PanelHeight = 380;
    private const int OthersWeeks = 4;

    // Below it a logarithmic axis has hardly a tick and shows nothing that a plain one does not.
    private const double LogFrom = 4;

    /// <summary>The name of the file of a story, from 1.</summary>
    public static string FileName(int number) => FormattableString.Invariant($"trend-story-{number}.png");

    /// <summary>Draws it as a PNG; the same story gives the same bytes.</summary>
    public static byte[] Render(TrendReport report, TrendStory story) => Png.Of(Compose(report, story), isSmall: true);

    /// <summary>What it shows, for those who do not see it.</summary>
    public static string Alternative(TrendReport report, TrendStory story)
    {
        ArgumentNullException.ThrowIfNull(story);
        return $"{TrendWords.Name(report, story.Findings[0].Line)}, week by week: {string.Join("; ", Told(story).Select(TrendWords.Change))}.";
    }

    /// <summary>Lays it out without drawing it.</summary>
    internal static Picture Compose(TrendReport report, TrendStory story)
    {
        TrendFinding[] told = Told(story);
        RibbonScale scale = new(new FigureSize(Width, 900));
        const int head = 190;
        Picture picture = new(Width, head + (told.Length * PanelHeight));
        float top = DrawHead(picture, scale, TrendWords.Sentence(report, story));
        float height = (picture.Height - top - (scale.Margin / 2)) / told.Length;
        DateOnly from = report.Sessions[0].Day!.Value;
        DateOnly to = report.Sessions[^1].Day!.Value;
        for (int i = 0; i < told.Length; i++)
        {
            DrawPanel(picture, scale, told[i], Area.Between(scale.Margin, top + (i * height), Width - scale.Margin, top + ((i + 1) * height) - scale.Gap), from, to);
        }

        return picture;
    }

    private static TrendFinding[] Told(TrendStory story) => [.. story.Findings.DistinctBy(finding => finding.Measure).Take(MostPanels)];

    private static float DrawHead(Picture picture, RibbonScale scale, string sentence)
    {
        float y = MathF.Round(scale.Margin * 0.6f);
        foreach (string line in TextMeasure.Wrap(sentence, scale.Name, Width - (2 * scale.Margin), 4))
        {
            picture.Text(line, scale.Name, scale.Margin, y);
            y += TextMeasure.LineHeight(scale.Name);
        }

        const string key = "Discs: weeks, the middle value or the share. Line: their moving average. Band: where it stays when nothing changes. Bar at the foot: the change. Broken line: the others.";
        picture.Text(TextMeasure.Fit(key, scale.Note, Width - (2 * scale.Margin)), scale.Note, scale.Margin, y + 4);
        return y + 4 + TextMeasure.LineHeight(scale.Note) + scale.Gap;
    }

    private static void DrawPanel(Picture picture, RibbonScale scale, TrendFinding finding, Area outer, DateOnly from, DateOnly to)
    {
        Panel panel = new(picture, scale.Note, outer, $"{TrendWords.Name(finding.Measure)}: {TrendWords.Value(finding.Measure, finding.Before)} before, {TrendWords.Value(finding.Measure, finding.After)} {(finding.Kind == ChangeKind.Episode ? "while it lasted" : "after")}");
        TrendChart chart = finding.Chart;
        Func<double, double> shown = Shown(finding.Measure);
        double[] values = [.. chart.Values.Select(shown), shown(chart.Centre + chart.Limit), shown(chart.Centre - chart.Limit)];
        bool isLog = finding.Measure.Scale == TrendScale.Level && values.Max() > LogFrom * values.Min();
        double least = isLog ? values.Min() / 1.1 : Math.Min(0, values.Min());
        ValueAxis up = panel.Upwards(least, isLog ? values.Max() * 1.1 : values.Max() * 1.05, isLog);
        ValueAxis across = panel.Rightwards(from.DayNumber, to.DayNumber + 7);
        float high = up.At(shown(chart.Centre + chart.Limit));
        float low = up.At(shown(chart.Centre - chart.Limit));
        picture.Fill(Area.Between(panel.Field.Left, high, panel.Field.Right, low), Inks.PassFill);
        panel.DrawLeft(up);
        panel.DrawBelow(TrendDays.Ticks(from, to).Select(tick => (across.At(tick.Day.DayNumber), tick.Text)));
        DrawOthers(picture, finding, shown, up, across);
        picture.Stamps([.. chart.Weeks.Select((week, i) => new Pixel(across.At(week.DayNumber), up.At(shown(chart.Values[i]))))], [], 8 * scale.Unit, Inks.Paper, Inks.Muted);
        picture.Path([.. chart.Weeks.Select((week, i) => new Pixel(across.At(week.DayNumber), up.At(shown(chart.Averages[i]))))], Inks.RejectLine, 3 * scale.Unit);
        DrawChange(picture, scale, finding, panel, across);
    }

    private static void DrawOthers(Picture picture, TrendFinding finding, Func<double, double> shown, ValueAxis up, ValueAxis across)
    {
        Pixel[] points =
        [
            .. finding.Others.GroupBy(other => other.Week.DayNumber / (7 * OthersWeeks))
                .Select(month => new Pixel(across.At(month.Average(other => (double)other.Week.DayNumber)), up.At(shown(month.Average(other => other.Middle))))),
        ];
        for (int i = 1; i < points.Length; i++)
        {
            picture.Line(points[i - 1].X, points[i - 1].Y, points[i].X, points[i].Y, Inks.QuestionableLine, 2, Dash.Dashed);
        }
    }

    private static void DrawChange(Picture picture, RibbonScale scale, TrendFinding finding, Panel panel, ValueAxis across)
    {
        float left = across.At(finding.From.DayNumber);
        float right = across.At(finding.Until.DayNumber);
        float bottom = panel.Field.Bottom;
        picture.Fill(Area.Between(left, bottom - (9 * scale.Unit), Math.Max(left + 3, right), bottom), Inks.RejectFill);
        picture.Line(left, panel.Field.Top, left, bottom, Inks.RejectLine, 1.5f, Dash.Dashed);
        if (finding.Kind == ChangeKind.Episode)
        {
            picture.Line(right, panel.Field.Top, right, bottom, Inks.RejectLine, 1.5f, Dash.Dashed);
        }
    }

    private static Func<double, double> Shown(TrendMeasure measure) => measure.Scale switch
    {
        TrendScale.Level => Math.Exp,
        TrendScale.Share => value => 100 * Math.Clamp(value, 0, 1),
        _ => value => value,
    };
}
