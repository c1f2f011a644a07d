using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Views;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>The baseline over time, its slope, and what is left to the rails; a rail is drawn where it is near.</summary>
internal static class BaselinePlot
{
    // As much as the limit on the range of a trial: less than that is no cause for alarm, and must not look like one.
    private const double LeastRange = 200;

    /// <summary>Draws the panel.</summary>
    /// <param name="picture">Where to.</param>
    /// <param name="subject">Whose baseline.</param>
    /// <param name="outer">All the room there is.</param>
    /// <param name="frame">What it shares with other baselines, or null when it stands alone.</param>
    public static void Draw(Picture picture, SheetSubject subject, Area outer, PanelFrame? frame = null)
    {
        ChannelView view = subject.View;
        if (view.Levels.Length < 2)
        {
            new Panel(picture, subject, outer, "Baseline", hasTimes: false).SayNothing("fewer than two full seconds");
            return;
        }

        frame ??= Alone(subject);
        Panel panel = new(picture, subject, outer, frame.Heading);
        ValueAxis up = panel.Upwards(frame.From, frame.To);
        TimeAxis times = new(view.Whole.FromS, view.Whole.ToS, panel.Field.Left, panel.Field.Right);
        panel.DrawLeft(up);
        panel.DrawBelow(times.Ticks(subject.Note).Select(tick => (times.X(tick.Seconds), tick.Text)));
        foreach (double rail in new[] { view.LowerRail, view.UpperRail }.OfType<double>().Where(rail => rail >= frame.From && rail <= frame.To))
        {
            picture.Line(panel.Field.Left, up.At(rail), panel.Field.Right, up.At(rail), Inks.RejectLine, 3, Dash.Dashed);
        }

        picture.Path(Points(view, times, up), Inks.Ink, Math.Max(1.5f, 2 * subject.Scale.Unit));
    }

    /// <summary>The levels with air around them.</summary>
    public static (double Low, double High) Range(SheetSubject subject)
    {
        double low = subject.View.Levels.DefaultIfEmpty(0).Min();
        double high = subject.View.Levels.DefaultIfEmpty(0).Max();
        double air = Math.Max((high - low) * 0.2, LeastRange / 2);
        return (low - air, high + air);
    }

    private static PanelFrame Alone(SheetSubject subject)
    {
        (double low, double high) = Range(subject);
        return new PanelFrame(Heading(subject), low, high);
    }

    // A gap breaks the line: levels are a second apart.
    private static List<Pixel> Points(ChannelView view, TimeAxis times, ValueAxis up)
    {
        List<Pixel> points = [];
        for (int i = 0; i < view.Levels.Length; i++)
        {
            if (i > 0 && view.LevelTimesS[i] - view.LevelTimesS[i - 1] > 1.5)
            {
                points.Add(new Pixel(times.X(view.LevelTimesS[i]), float.NaN));
            }

            points.Add(new Pixel(times.X(view.LevelTimesS[i]), up.At(view.Levels[i])));
        }

        return points;
    }

    private static string Heading(SheetSubject subject)
    {
        string unit = WholeTrace.Of(subject);
        string slope = subject.Measure("drift_slope") is { } value ? $"; slope {subject.With(Math.Round(value, 2) + 0.0)}/min" : string.Empty;
        string limits = string.Join(", ", new[] { subject.View.LowerRail, subject.View.UpperRail }.OfType<double>().Select(Quantities.Short));
        string room = limits.Length == 0 ? "; input limits not known"
            : subject.Measure("headroom") is { } left ? $"; it leaves {Quantities.Short(left)} % of the room to the input limits ({limits})"
            : $"; input limits {limits}";
        return $"Baseline{unit}{slope}{room}";
    }
}
