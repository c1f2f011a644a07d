using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Trends;

namespace ChannelAudit.Reports.Trends;

/// <summary>What a terminal shows of many recordings over time.</summary>
public static class TrendText
{
    /// <summary>The text, lines ended by LF.</summary>
    /// <param name="report">What was found.</param>
    /// <param name="audits">How many audits were read.</param>
    /// <param name="twice">How many recordings were left out because another audit has them.</param>
    /// <param name="own">One person's recordings beside the lab's usual range; null for none.</param>
    public static string Render(TrendReport report, int audits, int twice, OwnSetups? own)
    {
        ArgumentNullException.ThrowIfNull(report);
        StringBuilder text = new();
        foreach (string line in Lead(report, audits, twice))
        {
            text.Append(line).Append('\n');
        }

        ImmutableArray<TrendStory> stories = [.. report.Stories.Where(story => story.PartOf is null)];
        text.Append(stories.IsEmpty ? "\nNo change found.\n" : $"\n{Quantities.Many(stories.Length, "change")} found:\n");
        for (int i = 0; i < stories.Length; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{i + 1}. {TrendWords.Sentence(report, stories[i])}\n");
            foreach (TrendStory part in report.Stories.Where(story => story.PartOf == i))
            {
                text.Append($"   more than elsewhere at {TrendWords.Name(report, part.Findings[0].Line)}: {TrendWords.Change(part.Findings[0])}\n");
            }
        }

        text.Append(own is null ? string.Empty : "\n" + OwnWords.Text(own));
        return text.ToString();
    }

    /// <summary>What was looked at, and what was not.</summary>
    public static IEnumerable<string> Lead(TrendReport report, int audits, int twice)
    {
        ArgumentNullException.ThrowIfNull(report);
        string from = report.Sessions[0].Day!.Value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        string to = report.Sessions[^1].Day!.Value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        yield return $"{Quantities.Many(report.Sessions.Length, "recording")} in {Quantities.Many(audits, "audit")}, {from} to {to}.";
        int open = report.Lines.Length - report.LookedAt;
        yield return $"{Quantities.Many(report.LookedAt, "line")} looked at for a change"
            + (open > 0 ? $"; {open.Plain()} not assessed, because fewer than {TrendLine.LeastSessions.Plain()} recordings or {TrendLine.LeastWeeks.Plain()} weeks have a value." : ".");
        if (report.WithoutDay > 0)
        {
            yield return $"{Quantities.Many(report.WithoutDay, "recording")} left out: the setup says no day.";
        }

        if (twice > 0)
        {
            yield return $"{Quantities.Many(twice, "recording")} left out: the same bytes under the same id stand in another audit.";
        }
    }
}
