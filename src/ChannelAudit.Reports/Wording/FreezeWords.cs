using ChannelAudit.Criteria;

namespace ChannelAudit.Reports.Wording;

/// <summary>Whether limits are those of the day on which they were frozen, in words.</summary>
public static class FreezeWords
{
    /// <summary>One line: <c>lab.toml, as frozen on 2026-03-01, unchanged</c>.</summary>
    public static string Of(AuditCriteria criteria)
    {
        ArgumentNullException.ThrowIfNull(criteria);
        string name = criteria.FileName ?? "the defaults";
        return criteria.Frozen switch
        {
            null => $"{name}, not frozen",
            { IsUnchanged: true } frozen => $"{name}, as frozen on {frozen.Date}, unchanged",
            { } frozen => $"{name}, frozen on {frozen.Date} and changed since ({Quantities.Many(frozen.Differences.Length, "difference")})",
        };
    }
}
