using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Console;

/// <summary>One line a recording, worst first.</summary>
internal static class RecordingLines
{
    private const int VerdictColumns = 14;
    private const int NumberColumns = 7;
    private const int LongestName = 40;
    private const int FewestReasonColumns = 10;

    /// <summary>Writes the lines and a blank one.</summary>
    public static void Write(StringBuilder text, ImmutableArray<RecordingResult> recordings, TerminalStyle style)
    {
        int room = style.Columns - VerdictColumns - (3 * NumberColumns) - 4;
        int longest = recordings.Max(recording => TerminalText.Width(TerminalText.Clean(recording.Id)));
        int name = Math.Clamp(longest, "recording".Length, Math.Min(LongestName, room - FewestReasonColumns));
        int reasons = room - name;
        text.Append("Recordings, worst first, with their number of channels:\n").Append(TerminalText.Fit("worst", VerdictColumns)).Append("  ").Append(TerminalText.Fit("recording", name))
            .Append(" reject  quest.   pass  why\n");
        foreach (RecordingResult recording in recordings)
        {
            VerdictCounts channels = VerdictCounts.OfChannels([recording]);
            text.Append(TerminalText.Verdict(WorstFirst.Worst(recording), style)).Append("  ")
                .Append(TerminalText.Fit(TerminalText.Clean(recording.Id), name));
            foreach (int count in new[] { channels.Reject, channels.Questionable, channels.Pass })
            {
                text.Append(count.Plain().PadLeft(NumberColumns));
            }

            string why = TerminalText.Fit(Reasons(recording), reasons).TrimEnd();
            text.Append(why.Length > 0 ? "  " : string.Empty).Append(why).Append('\n');
        }

        text.Append('\n');
    }

    private static string Reasons(RecordingResult recording) => string.Join(", ", recording.Channels
        .Where(channel => FinalVerdict.OfChannel(recording, channel) != Grade.Pass)
        .SelectMany(channel => channel.Reasons)
        .GroupBy(reason => reason, StringComparer.Ordinal)
        .OrderByDescending(group => group.Count())
        .Select(group => ReasonWords.For(group.Key).Name));
}
