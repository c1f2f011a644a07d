using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Text;
using ChannelAudit.Toml;

namespace ChannelAudit.Criteria;

/// <summary>Writes limits as TOML that <see cref="CriteriaFile"/> reads back.</summary>
public static class CriteriaText
{
    /// <summary>All limits in force with their sources; a list that is empty is shown as switched off.</summary>
    /// <param name="criteria">The limits.</param>
    public static string Canonical(AuditCriteria criteria) => Write(criteria.All, withSources: true);

    /// <summary>The hash of limits, found anew from the limits themselves.</summary>
    public static string HashOf(AuditCriteria criteria) => Hash(criteria.All);

    /// <summary>SHA-256 over all limits, in lower-case hexadecimal; sources, which decide nothing, are left out.</summary>
    internal static string Hash(ImmutableArray<Criterion> all) => TomlFile.Hash(Encoding.UTF8.GetBytes(Hashed(all)));

    /// <summary>The text whose SHA-256 is the hash of the limits: all of them in their fixed order, without sources.</summary>
    internal static string Hashed(ImmutableArray<Criterion> all) => Write(all, withSources: false);

    /// <summary>One list of alternatives, as in the file.</summary>
    internal static string Sets(ImmutableArray<LimitSet> sets) => sets.IsEmpty ? "[]" : $"[{string.Join(", ", sets.Select(Set))}]";

    /// <summary>A limit as TOML writes it: always with a point or an exponent.</summary>
    internal static string Value(double value)
    {
        string digits = OneLine.Number(value);
        return digits.AsSpan().IndexOfAny('.', 'E') < 0 ? digits + ".0" : digits;
    }

    private static string Write(ImmutableArray<Criterion> all, bool withSources)
    {
        var text = new StringBuilder();
        foreach (Criterion criterion in all)
        {
            text.Append(text.Length == 0 ? string.Empty : "\n").Append('[').Append(criterion.Reason).Append("]\n");
            foreach (CriterionLevel level in CriterionLevel.Of(criterion.Reason))
            {
                ImmutableArray<LimitSet> sets = level.Get(criterion);
                text.Append(level.Key).Append(" = ").Append(Sets(sets)).Append(sets.IsEmpty ? "  # off" : string.Empty).Append('\n');
            }

            if (withSources)
            {
                text.Append("source = ").Append(Quoted(criterion.Source)).Append('\n');
            }
        }

        return text.ToString();
    }

    private static string Set(LimitSet set) =>
        $"{{ {string.Join(", ", set.Limits.Select(limit => $"{limit.Measure} = {Value(limit.Value)}"))} }}";

    // Sources come from a file through TomlSection, which lets no control character pass.
    private static string Quoted(string text) =>
        $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
