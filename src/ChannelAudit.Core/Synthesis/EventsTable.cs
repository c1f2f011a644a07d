using System.Globalization;
using System.Text;

namespace ChannelAudit.Synthesis;

/// <summary>The trials of a plan as a table of events: <c>onset</c>, <c>duration</c>, <c>trial_type</c>, tab-separated, lines ended by LF.</summary>
public static class EventsTable
{
    /// <summary>The text of the table.</summary>
    /// <param name="plan">The plan.</param>
    public static string Of(SessionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        StringBuilder table = new("onset\tduration\ttrial_type\n");
        foreach (PlannedTrial trial in plan.Trials)
        {
            table.Append(CultureInfo.InvariantCulture, $"{trial.OnsetS}\t{trial.DurationS}\t{trial.Label}\n");
        }

        return table.ToString();
    }
}
