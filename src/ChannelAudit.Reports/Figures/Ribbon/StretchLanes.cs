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
            Bar(picture, plan.Axis.X(finding.FromS), plan.Axis.X(finding.ToS), top, thickness, finding.Grade);
        }
    }

    private static void DrawLane(Picture picture, RibbonPlan plan, ChannelResult channel, string reason, float top)
    {
        string letter = ReasonLetters.For(reason);
        float letterWidth = TextMeasure.Width(letter, plan.Scale.Letter);
        float thickness = Math.Max(4, 7 * plan.Scale.Unit);
        float middle = top + ((plan.LaneHeight - thickness) / 2);
        float freeFrom = plan.Axis.Left;
        foreach (Finding finding in RibbonPlan.Stretches(channel).Where(finding => Is(finding, reason)).OrderBy(finding => finding.FromS))
        {
            float left = plan.Axis.X(finding.FromS);
            float right = Math.Max(left + 2, plan.Axis.X(finding.ToS));
            float letterLeft = Math.Min(left, plan.Axis.Right - letterWidth);
            if (letterLeft < freeFrom)
            {
                Bar(picture, Math.Max(left, freeFrom), right, middle, thickness, finding.Grade);
                continue;
            }

            picture.Text(letter, plan.Scale.Letter, letterLeft, top);
            float barLeft = letterLeft + letterWidth + 4;
            if (right - barLeft >= 2)
            {
                Bar(picture, barLeft, right, middle, thickness, finding.Grade);
            }
            else
            {
                // Too short for a bar beside its letter: a line below it, as long as the stretch.
                picture.Fill(Area.Between(left, top + plan.LaneHeight - 3, right, top + plan.LaneHeight - 1), Dark(finding.Grade));
            }

            freeFrom = Math.Max(right, barLeft);
        }
    }

    private static void Bar(Picture picture, float left, float right, float top, float thickness, Grade grade)
    {
        if (right <= left)
        {
            return;
        }

        Area box = new(left, top, right - left, thickness);
        picture.Fill(box, grade == Grade.Reject ? Inks.RejectFill : Inks.QuestionableFill);
        if (grade != Grade.Reject)
        {
            picture.Hatch(box, Inks.QuestionableLine, 6, 2);
        }

        picture.Fill(new Area(right - 2, top - 3, 2, thickness + 6), Dark(grade));
    }

    private static Color Dark(Grade grade) => grade == Grade.Reject ? Inks.RejectLine : Inks.QuestionableLine;

    private static bool Is(Finding finding, string reason) => string.Equals(finding.Reason, reason, StringComparison.Ordinal);
}
