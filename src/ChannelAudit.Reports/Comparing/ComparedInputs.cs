using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Comparing;

/// <summary>What differs in what two audits were made with, in lines.</summary>
internal static class ComparedInputs
{
    /// <summary>Version, criteria with each list of limits that differs, setup and readings.</summary>
    public static IEnumerable<string> Lines(StoredAudit a, StoredAudit b)
    {
        yield return "version   " + (string.Equals(a.Version, b.Version, StringComparison.Ordinal)
            ? $"{Plain(a.Version)} in both"
            : $"{Plain(a.Version)} -> {Plain(b.Version)}");
        string[] limits = [.. Limits(a.Criteria, b.Criteria)];
        yield return "criteria  " + Pair(a.Criteria.FileName, a.Criteria.Sha256, b.Criteria.FileName, b.Criteria.Sha256, "the defaults");
        yield return $"          {Plain(FreezeWords.Of(a.Criteria))} -> {Plain(FreezeWords.Of(b.Criteria))}";
        foreach (string line in limits)
        {
            yield return "          " + line;
        }

        yield return "setup     " + Pair(a.Setup.FileName, a.Setup.Sha256, b.Setup.FileName, b.Setup.Sha256, "none");
        yield return "readings  " + Pair(a.Impedance.FileName, a.Impedance.Sha256, b.Impedance.FileName, b.Impedance.Sha256, "none");
    }

    private static string Pair(string? fileA, string? hashA, string? fileB, string? hashB, string without)
    {
        string nameA = Plain(fileA ?? without);
        string nameB = Plain(fileB ?? without);
        if (string.Equals(hashA, hashB, StringComparison.Ordinal))
        {
            return string.Equals(nameA, nameB, StringComparison.Ordinal) ? $"{nameA}, the same in both" : $"{nameA} -> {nameB}, with the same content";
        }

        return $"{Hashed(nameA, hashA)} -> {Hashed(nameB, hashB)}";
    }

    // Eight digits tell two files apart; all of them stand in audit.json.
    private static string Hashed(string name, string? hash) => hash is { Length: > 8 } ? $"{name} ({Plain(hash[..8])})" : name;

    private static IEnumerable<string> Limits(AuditCriteria a, AuditCriteria b)
    {
        ImmutableArray<string> reasons = [.. a.All.Concat(b.All).Select(criterion => criterion.Reason).Distinct(StringComparer.Ordinal)];
        foreach (string reason in reasons)
        {
            Criterion? before = Find(a, reason);
            Criterion? after = Find(b, reason);
            foreach ((string level, Func<Criterion, ImmutableArray<LimitSet>> get) in LimitWords.Levels)
            {
                string was = before is null ? "no such reason" : LimitWords.Sets(get(before));
                string isNow = after is null ? "no such reason" : LimitWords.Sets(get(after));
                if (!string.Equals(was, isNow, StringComparison.Ordinal))
                {
                    yield return $"{Plain(reason)}, {level}: {Plain(was)} -> {Plain(isNow)}";
                }
            }
        }
    }

    private static Criterion? Find(AuditCriteria criteria, string reason) =>
        criteria.All.FirstOrDefault(criterion => string.Equals(criterion.Reason, reason, StringComparison.Ordinal));

    private static string Plain(string text) => TerminalText.Clean(text);
}
