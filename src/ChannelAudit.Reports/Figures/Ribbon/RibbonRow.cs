using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>One channel: its name and verdict in words at the left, its ribbon at the right.</summary>
internal static class RibbonRow
{
    /// <summary>Draws the row at a height.</summary>
    public static void Draw(Picture picture, RibbonPlan plan, ChannelResult channel, float top)
    {
        float air = plan.IsTall ? plan.Scale.Gap : 2;
        float bottom = top + plan.RowHeight;
        picture.Fill(Area.Between(plan.Scale.Margin, bottom, plan.Axis.Right, bottom + 1), Inks.Grid);
        RibbonRowText.Draw(picture, plan, channel, top);

        float lanesTop = top + air;
        float stripTop = lanesTop + (plan.Lanes * plan.LaneHeight);
        float blocksTop = stripTop + (plan.HasRunLetters ? TextMeasure.LineHeight(plan.Scale.Letter) : 0) + (plan.IsTall ? 2 : 3);
        Area area = Area.Between(plan.Axis.Left, blocksTop, plan.Axis.Right, bottom - air - plan.FootHeight);
        DrawGround(picture, plan, area);
        if (plan.IsTall)
        {
            StretchLanes.Draw(picture, plan, channel, lanesTop);
        }
        else
        {
            StretchLanes.DrawThin(picture, plan, channel, top + 2, 3);
        }

        ImmutableArray<TrialBlock> blocks = TrialBlocks.Lay(plan, channel, area);
        TrialBlocks.Draw(picture, plan, blocks);

        // Over the blocks too: what a trial has lost must not look as if it had been recorded.
        DrawGaps(picture, plan, area);
        if (plan.HasRunLetters)
        {
            RunLetters.Draw(picture, plan, blocks, stripTop);
        }

        DrawFeet(picture, plan, area.Bottom);
    }

    /// <summary>The foot of a trial that asked the muscle for something: dots for rest, a bar for a task.</summary>
    public static void DrawFoot(Picture picture, TrialRole role, Area box)
    {
        if (role == TrialRole.Task)
        {
            picture.Fill(box, Inks.Ink);
        }
        else if (role == TrialRole.Rest)
        {
            float dot = Math.Min(box.Height, 4);
            for (float left = box.Left; left + dot <= box.Right || left == box.Left; left += dot * 2)
            {
                picture.Fill(new Area(left, box.Top, dot, dot), Inks.Ink);
            }
        }
    }

    /// <summary>Time of which nothing is stored, on paper.</summary>
    public static void DrawGap(Picture picture, Area box)
    {
        picture.Fill(box, Inks.Paper);
        GapLook.Draw(picture, box);
    }

    private static void DrawGaps(Picture picture, RibbonPlan plan, Area area)
    {
        foreach (RecordedGap gap in plan.Recording.Gaps)
        {
            DrawGap(picture, Area.Between(plan.Axis.X(gap.FromS), area.Top, plan.Axis.X(gap.ToS), area.Bottom));
        }
    }

    private static void DrawGround(Picture picture, RibbonPlan plan, Area area)
    {
        Area recorded = Area.Between(plan.Axis.X(0), area.Top, plan.Axis.X(plan.Axis.RecordedS), area.Bottom);
        picture.Fill(recorded, Inks.Ribbon);
        DrawGaps(picture, plan, area);
        if (plan.Axis.ToS > plan.Axis.RecordedS)
        {
            picture.Fill(new Area(recorded.Right - 1, area.Top, 2, area.Height + plan.FootHeight), Inks.Ink);
        }

        if (plan.Recording.Trials.IsEmpty && area.Height >= TextMeasure.LineHeight(plan.Scale.Note))
        {
            picture.TextAround("no trials", plan.Scale.Note, area.CentreX, area.CentreY);
        }
    }

    private static void DrawFeet(Picture picture, RibbonPlan plan, float top)
    {
        float height = Math.Max(2, plan.FootHeight / 2);
        foreach (Trial trial in plan.Recording.Trials)
        {
            float left = plan.Axis.X((double)trial.OnsetS);
            float right = Math.Max(left + 2, plan.Axis.X((double)(trial.OnsetS + trial.DurationS)) - 1);
            DrawFoot(picture, trial.Role, Area.Between(left, top + 2, right, top + 2 + height));
        }
    }
}
