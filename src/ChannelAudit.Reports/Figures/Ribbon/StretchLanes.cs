using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>Findings over a stretch of time, as bars along the upper edge of a ribbon, each with its letter.</summary>
internal static class StretchLanes
{
    private const float Air = 4;
    private const float Between = 2;

    /// <summary>How many lanes a channel would like: one a reason.</summary>
    public static int CountFor(ChannelResult channel) =>
        RibbonPlan.Stretches(channel).Select(finding => finding.Reason).Distinct(StringComparer.Ordinal).Count();

    /// <summary>Draws the bars of a channel into the lanes, the worst first and on the lowest lane.</summary>
    public static void Draw(Picture picture, RibbonPlan plan, ChannelResult channel, float top)
    {
        string[] reasons = [.. RibbonPlan.Stretches(channel)
            .OrderByDescending(finding => finding.Grade)
            .ThenBy(finding => ReasonLetters.Rank(finding.Reason))
            .Select(finding => finding.Reason)
            .Distinct(StringComparer.Ordinal)];
        for (int index = 0; index < reasons.Length && index < plan.Lanes; index++)
        {
            float laneTop = top + ((plan.Lanes - 1 - index) * plan.LaneHeight);
            DrawLane(picture, plan, channel, reasons[index], laneTop);
        }
    }

    /// <summary>Where rows are low: one thin line on the upper edge, the worst on top.</summary>
    public static void DrawThin(Picture picture, RibbonPlan plan, ChannelResult channel, float top, float thickness)
    {
        foreach (Finding finding in RibbonPlan.Stretches(channel).OrderBy(finding => finding.Grade))
        {
            Stretch(picture, plan, channel, finding, plan.Axis.Left, new Area(0, top, 0, thickness));
        }
    }

    /// <summary>The sign of the legend: a bar for each grade in use, one above the other; thick at both ends only when it is scattered.</summary>
    public static void DrawSign(Picture picture, Area box, IReadOnlyList<Grade> grades, bool isScattered)
    {
        const float thickness = 6;
        float top = box.CentreY - (((grades.Count * thickness) + ((grades.Count - 1) * Between)) / 2);
        foreach (Grade grade in grades)
        {
            Area bar = new(box.Left, top, box.Width, thickness);
            Area start = bar with { Width = bar.Width / 3 };
            Area[] thick = isScattered ? [start, start with { Left = bar.Right - start.Width }] : [bar];
            Hull(picture, bar, grade);
            foreach (Area part in thick)
            {
                Bar(picture, part, grade);
            }

            top += thickness + Between;
        }
    }

    private static void DrawLane(Picture picture, RibbonPlan plan, ChannelResult channel, string reason, float top)
    {
        string letter = ReasonLetters.For(reason);
        float letterWidth = TextMeasure.Width(letter, plan.Scale.Letter);
        float thickness = Math.Max(4, 7 * plan.Scale.Unit);
        float middle = top + ((plan.LaneHeight - thickness) / 2);
        float freeFrom = plan.Axis.Left;
        IEnumerable<Finding> stretches = RibbonPlan.Stretches(channel).Where(finding => Is(finding, reason));
        foreach (Finding finding in stretches.OrderBy(finding => finding.FromS).ThenByDescending(finding => finding.Grade))
        {
            float left = plan.Axis.X(finding.FromS);
            float right = Math.Max(left + 2, plan.Axis.X(finding.ToS));

            // Before its bar where there is room, so that the bar starts at its true time.
            float letterLeft = Math.Min(Math.Max(freeFrom, left - letterWidth - Air), plan.Axis.Right - letterWidth);
            bool hasLetter = letterLeft >= freeFrom && letterLeft <= left;
            if (hasLetter)
            {
                picture.Text(letter, plan.Scale.Letter, letterLeft, top);
                freeFrom = letterLeft + letterWidth + Air;
            }

            if (!hasLetter || right - freeFrom >= 2)
            {
                Stretch(picture, plan, channel, finding, freeFrom, new Area(0, middle, 0, thickness));
            }
            else
            {
                // No room for a bar beside its letter: a line below it, as long as the stretch.
                picture.Fill(Area.Between(left, top + plan.LaneHeight - 3, right, top + plan.LaneHeight - 1), Dark(finding.Grade));
            }

            freeFrom = Math.Max(right, freeFrom);
        }
    }

    // Thick all through; or thin, and thick where trials show it, when much between them may be good.
    private static void Stretch(Picture picture, RibbonPlan plan, ChannelResult channel, Finding finding, float freeFrom, Area lane)
    {
        Area whole = Span(plan, finding, freeFrom, lane);
        if (!ScatteredFault.Is(plan.Recording, channel, finding))
        {
            Bar(picture, whole, finding.Grade);
            return;
        }

        Hull(picture, whole, finding.Grade);
        foreach (Finding trial in ScatteredFault.TrialsOf(channel, finding).OrderBy(trial => trial.Grade))
        {
            Bar(picture, Span(plan, trial, freeFrom, lane), trial.Grade);
        }
    }

    private static Area Span(RibbonPlan plan, Finding finding, float freeFrom, Area lane)
    {
        float left = plan.Axis.X(finding.FromS);
        return Area.Between(Math.Max(left, freeFrom), lane.Top, Math.Max(left + 2, plan.Axis.X(finding.ToS)), lane.Bottom);
    }

    private static void Bar(Picture picture, Area box, Grade grade)
    {
        if (box.Width <= 0)
        {
            return;
        }

        picture.Fill(box, grade == Grade.Reject ? Inks.RejectFill : Inks.QuestionableFill);
        if (grade != Grade.Reject)
        {
            picture.Hatch(box, Inks.QuestionableLine, 6, 2);
        }
    }

    private static void Hull(Picture picture, Area box, Grade grade)
    {
        if (box.Width > 0)
        {
            float thickness = box.Height >= 6 ? 2 : 1;
            picture.Fill(Area.Around(box.CentreX, box.CentreY, box.Width, thickness), Dark(grade));
        }
    }

    private static Color Dark(Grade grade) => grade == Grade.Reject ? Inks.RejectLine : Inks.QuestionableLine;

    private static bool Is(Finding finding, string reason) => string.Equals(finding.Reason, reason, StringComparison.Ordinal);
}
