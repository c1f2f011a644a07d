using System.Globalization;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>Which cells a blind person goes through, and in which order; it stands in the origin of every blind decision, so that the order can be had again.</summary>
/// <param name="Seed">The seed of the order.</param>
/// <param name="Scope">Which cells.</param>
internal readonly record struct BlindOrder(uint Seed, ReviewScope Scope)
{
    private const string SeedKey = "seed";
    private const string ScopeKey = "cells";

    /// <summary>The parts of an origin: <c>seed=42</c>, and where not all cells are gone through <c>cells=questionable</c>.</summary>
    public IEnumerable<(string Key, string Value)> Parts => Scope == ReviewScope.All
        ? [(SeedKey, Seed.ToString(CultureInfo.InvariantCulture))]
        : [(SeedKey, Seed.ToString(CultureInfo.InvariantCulture)), (ScopeKey, CodeOf(Scope))];

    /// <summary>The order that an origin states; null when it states none.</summary>
    public static BlindOrder? Of(ReviewOrigin origin) =>
        uint.TryParse(origin[SeedKey], NumberStyles.None, CultureInfo.InvariantCulture, out uint seed) ? new BlindOrder(seed, ScopeOf(origin[ScopeKey])) : null;

    private static ReviewScope ScopeOf(string? word) =>
        Enum.GetValues<ReviewScope>().Where(scope => string.Equals(CodeOf(scope), word, StringComparison.Ordinal)).DefaultIfEmpty(ReviewScope.All).First();

    private static string CodeOf(ReviewScope scope) => scope switch
    {
        ReviewScope.Questionable => "questionable",
        ReviewScope.Flagged => "flagged",
        _ => "all",
    };
}
