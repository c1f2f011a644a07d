using System.Text;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Verifying;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Bundles;

/// <summary>What came of each exclusion, for the terminal.</summary>
public static class BundleText
{
    /// <summary>What came of all of them, as one check among the others; where none could be checked it says so.</summary>
    public static AuditCheck Check(IReadOnlyList<ExclusionOutcome> outcomes)
    {
        ArgumentNullException.ThrowIfNull(outcomes);
        (int confirmed, int differ, int open) = (Count(outcomes, ExclusionState.Confirmed), Count(outcomes, ExclusionState.Differs), Count(outcomes, ExclusionState.NotCheckable));
        return new AuditCheck(
            "exclusions",
            differ > 0 ? CheckState.Differs : confirmed == 0 && open > 0 ? CheckState.NotChecked : CheckState.Ok,
            outcomes.Count == 0 ? "none" : FormattableString.Invariant($"{confirmed} confirmed, {differ} differ, {open} not checkable from the bundle; each is below"));
    }

    /// <summary>A count, then a line for each; what differs first.</summary>
    public static string Render(IReadOnlyList<ExclusionOutcome> outcomes)
    {
        ArgumentNullException.ThrowIfNull(outcomes);
        StringBuilder text = new();
        text.Append(FormattableString.Invariant(
            $"\nExclusions: {Count(outcomes, ExclusionState.Confirmed)} confirmed, {Count(outcomes, ExclusionState.Differs)} differ, {Count(outcomes, ExclusionState.NotCheckable)} not checkable from the bundle\n"));
        foreach (ExclusionOutcome outcome in outcomes.OrderBy(outcome => outcome.State switch { ExclusionState.Differs => 0, ExclusionState.Confirmed => 1, _ => 2 }))
        {
            Exclusion exclusion = outcome.Exclusion;
            string reasons = exclusion.Reasons.IsEmpty ? string.Empty : $" ({string.Join(", ", exclusion.Reasons)})";
            text.Append("  ").Append(Word(outcome.State).PadRight(15)).Append(TerminalText.Clean($"{Name(exclusion)}, {VerdictWords.Code(exclusion.Final)}{reasons}: {outcome.Text}")).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Which one: recording, channel, and the trial when it is about one.</summary>
    internal static string Name(Exclusion exclusion) =>
        $"{exclusion.Recording}, {exclusion.Channel}, {(exclusion.Trial is { } trial ? FormattableString.Invariant($"trial {trial}") : "the channel")}";

    private static int Count(IReadOnlyList<ExclusionOutcome> outcomes, ExclusionState state) => outcomes.Count(outcome => outcome.State == state);

    private static string Word(ExclusionState state) => state switch
    {
        ExclusionState.Confirmed => "confirmed",
        ExclusionState.Differs => "differs",
        _ => "not checkable",
    };
}
