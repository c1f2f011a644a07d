using System.Collections.Immutable;

namespace ChannelAudit.Reports.Comparing;

/// <summary>Trials of a channel that changed in the same way, or one whole channel; never empty.</summary>
/// <param name="Changes">The changes in the order of their trials.</param>
public sealed record ChangeGroup(ImmutableArray<VerdictChange> Changes)
{
    /// <summary>The first of them.</summary>
    public VerdictChange First => Changes[0];

    /// <summary>Changes of one recording, those alike drawn together; each group stands where its first change stood.</summary>
    public static IEnumerable<ChangeGroup> Of(ImmutableArray<VerdictChange> changes) =>
        changes.GroupBy(Key, StringComparer.Ordinal).Select(group => new ChangeGroup([.. group]));

    // Everything but the trial and the value.
    private static string Key(VerdictChange change) => string.Join(
        '\n',
        change.Label,
        change.Channel,
        change.Trial is null ? "whole" : "trial",
        change.VerdictA,
        change.VerdictB,
        Codes(change.ReasonsGone),
        Codes(change.ReasonsNew),
        Codes(change.NotAssessedGone),
        Codes(change.NotAssessedNew),
        change.Measure is { } measure
            ? FormattableString.Invariant($"{measure.Measure} {measure.LimitA:R} {measure.LimitB:R} {measure.Where} {measure.ValueA.HasValue} {measure.ValueB.HasValue} {measure.ValueA == measure.ValueB}")
            : string.Empty);

    private static string Codes(ImmutableArray<string> codes) => string.Join(';', codes);
}
