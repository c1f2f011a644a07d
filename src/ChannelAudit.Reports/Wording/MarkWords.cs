using System.Globalization;
using ChannelAudit.Pilot;

namespace ChannelAudit.Reports.Wording;

/// <summary>What to say of task marks that seem shifted.</summary>
public static class MarkWords
{
    /// <summary>One sentence with what to do; empty when the marks seem in place.</summary>
    /// <param name="report">The pilot.</param>
    public static string Of(PilotReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report.MarksLateS is not { } late)
        {
            return string.Empty;
        }

        string seconds = Math.Abs(late).ToString("0.0", CultureInfo.InvariantCulture);
        (string how, string where) = late > 0 ? ("late", "before") : ("early", "after");
        return $"The task marks seem {seconds} s {how}: every muscle answers best that much {where} its mark. Nothing was moved. "
            + "Look at the clock or trigger that makes them, correct the times (--events FILE), and run this again before you touch anything.";
    }
}
