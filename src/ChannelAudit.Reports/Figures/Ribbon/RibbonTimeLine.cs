using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>Trial numbers and times below the ribbons, and the fine lines that lead up from the times.</summary>
internal static class RibbonTimeLine
{
    private const float Air = 8;

    /// <summary>Height in pixels: one line of trial numbers when there are trials, one of times.</summary>
    public static float Height(RibbonScale scale, bool hasTrials) => ((hasTrials ? 2 : 1) * TextMeasure.LineHeight(scale.Note)) + (4 * scale.Gap);

    /// <summary>The fine lines; drawn first, so that everything else lies over them.</summary>
    public static void DrawGrid(Picture picture, RibbonScale scale, TimeAxis axis, float top, float bottom)
    {
        foreach ((double seconds, _) in axis.Ticks(scale.Note))
        {
            float x = MathF.Round(axis.X(seconds));
            picture.Fill(Area.Between(x, top, x + 1, bottom + scale.Gap), Inks.Grid);
        }
    }

    /// <summary>The numbers and times.</summary>
    public static void Draw(Picture picture, RibbonPlan plan, float top)
    {
        TextStyle style = plan.Scale.Note;
        float timesTop = top;
        if (!plan.Recording.Trials.IsEmpty)
        {
            timesTop += TextMeasure.LineHeight(style) + plan.Scale.Gap;
            Heading(picture, plan, "trial", top);
            DrawNumbers(picture, plan, top);
        }

        Heading(picture, plan, plan.Axis.ToS - plan.Axis.FromS >= 3600 ? "time, h:mm:ss" : "time", timesTop);
        float freeFrom = float.MinValue;
        foreach ((double seconds, string text) in plan.Axis.Ticks(style))
        {
            float width = TextMeasure.Width(text, style);
            float left = Math.Min(plan.Axis.X(seconds) - (width / 2), picture.Width - (plan.Scale.Margin / 4) - width);
            if (left >= freeFrom)
            {
                freeFrom = picture.Text(text, style, MathF.Round(left), timesTop).Right + Air;
            }
        }
    }

    private static void Heading(Picture picture, RibbonPlan plan, string text, float top)
    {
        TextStyle style = plan.Scale.Note;
        float right = plan.Axis.Left - TextMeasure.Width("0:00:00", style);
        string fitted = TextMeasure.Fit(text, style, right - (plan.Scale.Margin / 2));
        picture.Text(fitted, style, right - TextMeasure.Width(fitted, style), top);
    }

    // All numbers, else every second, fifth, tenth and so on: the first step at which none touch.
    private static void DrawNumbers(Picture picture, RibbonPlan plan, float top)
    {
        (Trial Trial, float Left, float Right)[] places = [.. plan.Recording.Trials.Select(trial => Place(plan, trial)).OrderBy(place => place.Left)];
        int step = Steps().First(candidate => !Touch(places.Where(place => IsShown(place.Trial, candidate))));
        foreach ((Trial trial, float left, float _) in places.Where(place => IsShown(place.Trial, step)))
        {
            picture.Text(Quantities.Plain(trial.Number), plan.Scale.Note, MathF.Round(left), top);
        }
    }

    private static (Trial Trial, float Left, float Right) Place(RibbonPlan plan, Trial trial)
    {
        float width = TextMeasure.Width(Quantities.Plain(trial.Number), plan.Scale.Note);
        float centre = (plan.Axis.X((double)trial.WindowFromS) + plan.Axis.X((double)trial.WindowToS)) / 2;
        float left = Math.Clamp(centre - (width / 2), plan.Axis.Left, plan.Axis.Right - width);
        return (trial, left, left + width);
    }

    private static bool Touch(IEnumerable<(Trial Trial, float Left, float Right)> places)
    {
        float freeFrom = float.MinValue;
        foreach ((_, float left, float right) in places)
        {
            if (left < freeFrom)
            {
                return true;
            }

            freeFrom = right + Air;
        }

        return false;
    }

    private static bool IsShown(Trial trial, int step) => trial.Number % step == 0 || trial.Number == 1;

    private static IEnumerable<int> Steps()
    {
        for (int power = 1; power <= 100_000_000; power *= 10)
        {
            yield return power;
            yield return 2 * power;
            yield return 5 * power;
        }

        yield return int.MaxValue;
    }
}
