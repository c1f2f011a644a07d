using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Console;

/// <summary>A row for each recording, worst first.</summary>
internal static class RecordingLines
{
    private const int LongestName = 37;

    /// <summary>Writes the rows and a blank line.</summary>
    public static void Write(StringBuilder text, ImmutableArray<RecordingResult> recordings, TerminalStyle style)
    {
        foreach (string line in TerminalText.Wrap("Recordings, worst first, with their number of channels:", style.Columns))
        {
            text.Append(line).Append('\n');
        }

        VerdictRows rows = new(text, "recording", "channels", recordings.Select(recording => TerminalText.Clean(recording.Id)), LongestName, style);
        rows.Head("worst");
        foreach (RecordingResult recording in recordings)
        {
            rows.Row(WorstFirst.Worst(recording), TerminalText.Clean(recording.Id), VerdictCounts.OfChannels([recording]), Why(recording));
        }

        text.Append('\n');
    }

    private static ImmutableArray<string> Why(RecordingResult recording)
    {
        string reasons = string.Join(", ", recording.Channels
            .Where(channel => FinalVerdict.OfChannel(recording, channel) != Grade.Pass)
            .SelectMany(channel => channel.Reasons)
            .GroupBy(reason => reason, StringComparer.Ordinal)
            .OrderByDescending(group => group.Count())
            .Select(group => ReasonWords.For(group.Key).Name));
        string[] lines = reasons.Length == 0 ? [] : [reasons];
        return recording.Information.Any(finding => string.Equals(finding.Reason, ReasonCode.Events, StringComparison.Ordinal))
            ? [.. lines, $"also: {ReasonWords.For(ReasonCode.Events).Name}, see report.html"]
            : [.. lines];
    }
}
