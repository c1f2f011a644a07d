using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>Letters above blocks that are too narrow to hold one; neighbours with the same verdict and reason share a letter.</summary>
internal static class RunLetters
{
    private const float Air = 3;

    /// <summary>Draws them in a strip, rejects first; a letter that would touch another is left out.</summary>
    public static void Draw(Picture picture, RibbonPlan plan, ImmutableArray<TrialBlock> blocks, float top)
    {
        List<(float Left, float Right)> taken = [];
        foreach ((VerdictLook _, string letter, float left, float right) in Runs(plan, blocks).OrderByDescending(run => run.Look).ThenByDescending(run => run.Right - run.Left))
        {
            float width = TextMeasure.Width(letter, plan.Scale.Letter);
            float start = Math.Clamp(((left + right) / 2) - (width / 2), plan.Axis.Left, plan.Axis.Right - width);
            if (taken.Exists(place => start < place.Right + Air && start + width > place.Left - Air))
            {
                continue;
            }

            picture.Text(letter, plan.Scale.Letter, start, top);
            taken.Add((start, start + width));
        }
    }

    private static List<(VerdictLook Look, string Letter, float Left, float Right)> Runs(RibbonPlan plan, ImmutableArray<TrialBlock> blocks)
    {
        List<(VerdictLook Look, string Letter, float Left, float Right)> runs = [];
        TrialBlock? before = null;
        foreach (TrialBlock block in blocks)
        {
            bool needsLetter = block.Look >= VerdictLook.Questionable && !BlockContent.HoldsLetter(plan.Scale, block);
            if (needsLetter && before is not null && before.Look == block.Look && string.Equals(before.Letters[0], block.Letters[0], StringComparison.Ordinal))
            {
                runs[^1] = runs[^1] with { Right = block.Area.Right };
            }
            else if (needsLetter)
            {
                runs.Add((block.Look, block.Letters[0], block.Area.Left, block.Area.Right));
            }

            before = needsLetter ? block : null;
        }

        return runs;
    }
}
