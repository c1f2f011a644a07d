using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Decisions;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>What one person has decided on this page, blind or not: the two are kept apart.</summary>
/// <param name="by">Who.</param>
/// <param name="isBlind">Whether blind.</param>
internal sealed class OwnDecisions(string? by, bool isBlind)
{
    private const string Origin = "review";
    private const string SeedKey = ":seed=";
    private const int MostReasons = 30;

    /// <summary>The origin that a line states: <c>review</c>, and of a blind review the seed of its order, <c>review:seed=42</c>.</summary>
    public static string OriginOf(uint? seed) => seed is { } number ? $"{Origin}{SeedKey}{number.ToString(CultureInfo.InvariantCulture)}" : Origin;

    /// <summary>Whether a line is this person's, of the same kind of review.</summary>
    public bool Holds(Decision line) =>
        line.Action == DecisionAction.Decide && line.Blind == isBlind && string.Equals(line.By, by, StringComparison.Ordinal);

    /// <summary>The seed of this person's last blind decision; null when there is none.</summary>
    public uint? SeedIn(Ledger ledger) => ledger.Lines.Where(Holds).Reverse()
        .Select(line => line.Origin.StartsWith(Origin + SeedKey, StringComparison.Ordinal)
            && uint.TryParse(line.Origin.AsSpan(Origin.Length + SeedKey.Length), NumberStyles.None, CultureInfo.InvariantCulture, out uint seed) ? seed : (uint?)null)
        .FirstOrDefault(seed => seed is not null);

    /// <summary>This person's last decision on the page that still stands; null when there is none.</summary>
    public Decision? LastIn(Ledger ledger) => ledger.Lines.LastOrDefault(line =>
        Holds(line) && line.Origin.StartsWith(Origin, StringComparison.Ordinal) && ledger.WithdrawnBy(line.Number) is null);

    /// <summary>This person's earlier reasons, the latest first, each once.</summary>
    public ImmutableArray<string> ReasonsIn(Ledger ledger) =>
        [.. ledger.Lines.Where(Holds).Reverse().Select(line => line.Reason).Distinct(StringComparer.Ordinal).Take(MostReasons)];
}
