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

    /// <summary>Writes the lines and a blank one.</summary>
    public static void Write(StringBuilder text, ImmutableArray<RecordingResult> recordings, TerminalStyle style)
    {
        int name = Math.Min(LongestName, recordings.Max(recording => TerminalText.Width(TerminalText.Clean(recording.Id))));
        name = Math.Max(name, "recording".Length);
        int reasons = style.Columns - VerdictColumns - name - (3 * NumberColumns) - 4;
        text.Append(TerminalText.Fit("worst", VerdictColumns)).Append("  ").Append(TerminalText.Fit("recording", name))
            .Append(" reject  quest.   pass  commonest reasons\n");
        foreach (RecordingResult recording in recordings)
        {
            VerdictCounts channels = VerdictCounts.OfChannels([recording]);
            text.Append(TerminalText.Verdict(WorstFirst.Worst(recording), style)).Append("  ")
                .Append(TerminalText.Fit(TerminalText.Clean(recording.Id), name));
            foreach (int count in new[] { channels.Reject, channels.Questionable, channels.Pass })
            {
                text.Append(count.Plain().PadLeft(NumberColumns));
            }

            text.Append("  ").Append(TerminalText.Fit(Reasons(recording), reasons).TrimEnd()).Append('\n');
        }

        text.Append("(numbers of channels)\n\n");
    }

    private static string Reasons(RecordingResult recording) => string.Join(", ", recording.Channels
        .Where(channel => FinalVerdict.OfChannel(recording, channel) != Grade.Pass)
        .SelectMany(channel => channel.Reasons)
        .GroupBy(reason => reason, StringComparer.Ordinal)
        .OrderByDescending(group => group.Count())
        .Select(group => ReasonWords.For(group.Key).Name));
}
