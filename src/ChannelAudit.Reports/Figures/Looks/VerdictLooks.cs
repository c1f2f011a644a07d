using System.Collections.Immutable;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures.Looks;

/// <summary>Which look a result has; it reads the verdict and never makes one.</summary>
internal static class VerdictLooks
{
    /// <summary>The look of a channel.</summary>
    public static VerdictLook Of(ChannelResult channel) => Of(channel.Verdict, channel.Measures, channel.Cells.Any(cell => HasNumbers(cell.Measures)));

    /// <summary>The look of a channel during a trial; a missing cell was not assessed.</summary>
    public static VerdictLook Of(CellResult? cell) => cell is null ? VerdictLook.NotAssessed : Of(cell.Verdict, cell.Measures, hasOtherNumbers: false);

    /// <summary>The word for a look.</summary>
    public static string Word(VerdictLook look) => look switch
    {
        VerdictLook.Pass => VerdictWords.Code(Grade.Pass),
        VerdictLook.Questionable => VerdictWords.Code(Grade.Questionable),
        VerdictLook.Reject => VerdictWords.Code(Grade.Reject),
        _ => "not assessed",
    };

    // A reject always had evidence; anything else without a single number must not look as if it had been judged.
    private static VerdictLook Of(Grade verdict, ImmutableArray<GradedMeasure> measures, bool hasOtherNumbers) => verdict switch
    {
        Grade.Reject => VerdictLook.Reject,
        _ when !hasOtherNumbers && !HasNumbers(measures) => VerdictLook.NotAssessed,
        Grade.Questionable => VerdictLook.Questionable,
        _ => VerdictLook.Pass,
    };

    private static bool HasNumbers(ImmutableArray<GradedMeasure> measures) => measures.Any(measure => measure.Value.Value is not null);
}
