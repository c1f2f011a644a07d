using System.Collections.Immutable;
using ChannelAudit.Decisions;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>What one person has decided on this page, blind or not: the two are kept apart.</summary>
/// <param name="by">Who.</param>
/// <param name="isBlind">Whether blind.</param>
internal sealed class OwnDecisions(string? by, bool isBlind)
{
    private const int MostReasons = 30;

    /// <summary>Whether a line is this person's, of the same kind of review.</summary>
    public bool Holds(Decision line) =>
        line.Action == DecisionAction.Decide && line.Blind == isBlind && string.Equals(line.By, by, StringComparison.Ordinal);

    /// <summary>The order of this person's last blind decision; null when there is none.</summary>
    public BlindOrder? OrderIn(Ledger ledger) => ledger.Lines.Where(Holds).Reverse()
        .Select(line => ReviewOrigin.Read(line.Origin) is { } origin ? BlindOrder.Of(origin) : null)
        .FirstOrDefault(order => order is not null);

    /// <summary>This person's last decision on the page that still stands; null when there is none.</summary>
    public Decision? LastIn(Ledger ledger) => ledger.Lines.LastOrDefault(line =>
        Holds(line) && ReviewOrigin.Read(line.Origin) is not null && ledger.WithdrawnBy(line.Number) is null);

    /// <summary>A decision and those that were made with it in one step, as far as they stand, in their order.</summary>
    /// <param name="ledger">The ledger.</param>
    /// <param name="one">One of them.</param>
    public ImmutableArray<Decision> StepOf(Ledger ledger, Decision one)
    {
        int head = HeadOf(one);
        return [.. ledger.Lines.Skip(head - 1).Where(line => Holds(line) && HeadOf(line) == head && ledger.WithdrawnBy(line.Number) is null)];
    }

    /// <summary>This person's earlier reasons, the latest first, each once.</summary>
    public ImmutableArray<string> ReasonsIn(Ledger ledger) =>
        [.. ledger.Lines.Where(Holds).Reverse().Select(line => line.Reason).Distinct(StringComparer.Ordinal).Take(MostReasons)];

    private static int HeadOf(Decision line) => ReviewOrigin.Read(line.Origin)?.Like ?? line.Number;
}
