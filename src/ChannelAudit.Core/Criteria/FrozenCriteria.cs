using System.Text;

namespace ChannelAudit.Criteria;

/// <summary>Writes a criteria file that knows the day it was frozen, and the limits of that day.</summary>
public static class FrozenCriteria
{
    /// <summary>The file: all limits in force with their sources, then the record of the freeze. The same limits, date and version give the same text.</summary>
    /// <param name="criteria">The limits.</param>
    /// <param name="date">The day as <c>yyyy-MM-dd</c>.</param>
    /// <param name="version">The version of the program.</param>
    public static string Render(AuditCriteria criteria, string date, string version)
    {
        ArgumentNullException.ThrowIfNull(criteria);
        StringBuilder text = new();
        text.Append("# Limits of channelaudit ").Append(version).Append(", frozen on ").Append(date).Append(": all that were in force, with their sources.\n")
            .Append("# SHA-256 of the limits: ").Append(criteria.Sha256).Append(" (comments and sources do not change it).\n")
            .Append("# Give this file to --criteria: every audit says whether the limits are still those of that day.\n\n")
            .Append(CriteriaText.Canonical(criteria)).Append('\n')
            .Append(FreezeTable.Write(criteria.All, date, version));
        return text.ToString();
    }
}
