using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>The trials of a ribbon as blocks at their true time.</summary>
internal static class TrialBlocks
{
    private const float Narrowest = 2;
    private const float SeparableFrom = 4;
    private const int MostLetters = 3;

    /// <summary>Lays out the blocks of a channel, in trial order.</summary>
    public static ImmutableArray<TrialBlock> Lay(RibbonPlan plan, ChannelResult channel, Area area)
    {
        Dictionary<int, CellResult> cells = channel.Cells.ToDictionary(cell => cell.Trial);
        ImmutableArray<TrialBlock>.Builder blocks = ImmutableArray.CreateBuilder<TrialBlock>();
        float trackHeight = area.Height / plan.TrackCount;
        for (int index = 0; index < plan.Recording.Trials.Length; index++)
        {
            Trial trial = plan.Recording.Trials[index];
            CellResult? cell = cells.GetValueOrDefault(trial.Number);
            VerdictLook look = VerdictLooks.Of(cell);
            float bottom = area.Bottom - (plan.Tracks[index] * trackHeight);
            float height = MathF.Max(2, (trackHeight - (plan.TrackCount > 1 ? 2 : 0)) * TrialBlock.HeightOf(look));
            float left = plan.Axis.X((double)trial.WindowFromS);
            float width = Math.Max(Narrowest, plan.Axis.X((double)trial.WindowToS) - left);
            Area box = new(Math.Min(left, plan.Axis.Right - width), bottom - height, width, height);
            blocks.Add(new TrialBlock(trial, look, Letters(cell), cell is { NotAssessed.IsEmpty: false }, Separated(box)));
        }

        return blocks.ToImmutable();
    }

    /// <summary>Draws the blocks, the worst on top, then what stands in them.</summary>
    public static void Draw(Picture picture, RibbonPlan plan, ImmutableArray<TrialBlock> blocks)
    {
        foreach (TrialBlock block in blocks.OrderBy(block => block.Look))
        {
            DrawBody(picture, block);
        }

        foreach (TrialBlock block in blocks.Where(_ => !plan.AreTracksCrowded))
        {
            BlockContent.Draw(picture, plan.Scale, block);
        }
    }

    private static ImmutableArray<string> Letters(CellResult? cell) => cell is null
        ? []
        : [.. cell.Reasons.Select(ReasonLetters.For).Distinct(StringComparer.Ordinal).Take(MostLetters)];

    // Neighbours that touch in time stay apart to the eye.
    private static Area Separated(Area box) => box.Width >= SeparableFrom ? Area.Between(box.Left + 0.5f, box.Top, box.Right - 0.5f, box.Bottom) : box;

    private static void DrawBody(Picture picture, TrialBlock block)
    {
        Area box = block.Area;
        bool hasOutline = box.Width >= 6;
        switch (block.Look)
        {
            case VerdictLook.Reject:
                picture.Fill(box, Inks.RejectFill);
                break;
            case VerdictLook.Questionable:
                picture.Fill(box, hasOutline ? Inks.QuestionableFill : Inks.QuestionableLine);
                if (hasOutline)
                {
                    picture.Hatch(box, Inks.QuestionableLine, 9, 2);
                    picture.Outline(box, Inks.QuestionableLine, 1.5f);
                }

                break;
            case VerdictLook.Pass:
                picture.Fill(box, Inks.PassFill);
                DrawEdge(picture, box, Inks.PassLine, hasOutline, block.HasOpenQuestions ? Dash.Dashed : Dash.Solid);
                break;
            default:
                picture.Fill(box, Inks.Paper);
                DrawEdge(picture, box, Inks.OpenLine, hasOutline, Dash.Dotted);
                break;
        }
    }

    private static void DrawEdge(Picture picture, Area box, Color color, bool hasOutline, Dash dash)
    {
        if (hasOutline)
        {
            picture.Outline(box, color, 1.5f, dash);
        }
        else if (dash == Dash.Dotted)
        {
            picture.Line(MathF.Floor(box.CentreX) + 0.5f, box.Top, MathF.Floor(box.CentreX) + 0.5f, box.Bottom, color, 1, dash);
        }
        else
        {
            picture.Fill(new Area(box.Left, box.Top, box.Width, 2), color);
        }
    }
}
