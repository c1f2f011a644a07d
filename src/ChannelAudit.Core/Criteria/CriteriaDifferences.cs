using System.Collections.Immutable;

namespace ChannelAudit.Criteria;

/// <summary>Says what differs between two sets of limits.</summary>
public static class CriteriaDifferences
{
    /// <summary>One line for each list of limits that differs: reason, list, before and after.</summary>
    /// <param name="before">Usually the defaults.</param>
    /// <param name="after">The limits in force; of the same reason codes.</param>
    public static ImmutableArray<string> Lines(AuditCriteria before, AuditCriteria after)
    {
        ImmutableArray<string>.Builder lines = ImmutableArray.CreateBuilder<string>();
        foreach (Criterion old in before.All)
        {
            Criterion now = after.For(old.Reason);
            foreach (CriterionLevel level in CriterionLevel.Of(old.Reason))
            {
                string was = CriteriaText.Sets(level.Get(old));
                string isNow = CriteriaText.Sets(level.Get(now));
                if (!string.Equals(was, isNow, StringComparison.Ordinal))
                {
                    lines.Add($"[{old.Reason}] {level.Key}: {was} -> {isNow}");
                }
            }
        }

        return lines.ToImmutable();
    }
}
