using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>One trial on one ribbon.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Look">How its verdict looks.</param>
/// <param name="Letters">Letters of its reasons, worst first.</param>
/// <param name="HasOpenQuestions">Whether something was not assessed.</param>
/// <param name="Area">Where it is; the worse the verdict, the higher the block.</param>
internal sealed record TrialBlock(Trial Trial, VerdictLook Look, ImmutableArray<string> Letters, bool HasOpenQuestions, Area Area)
{
    /// <summary>The share of the ribbon's height that a look takes.</summary>
    public static float HeightOf(VerdictLook look) => look switch
    {
        VerdictLook.Pass => 0.42f,
        VerdictLook.NotAssessed => 0.56f,
        VerdictLook.Questionable => 0.72f,
        _ => 1,
    };
}
