using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Console;

/// <summary>A row for each recording, worst first.</summary>
internal static class RecordingLines
{
    private const int LongestName = 37;

    /// <summary>Writes the rows and a blank line.</summary>
    public static void Write(StringBuilder text, ImmutableArray<RecordingDigest> recordings, TerminalStyle style)
    {
        foreach (string line in TerminalText.Wrap("Recordings, worst first, with their number of channels:", style.Columns))
        {
            text.Append(line).Append('\n');
        }

        VerdictRows rows = new(text, "recording", "channels", recordings.Select(recording => TerminalText.Clean(recording.Id)), LongestName, style);
        rows.Head("worst");
        foreach (RecordingDigest recording in recordings)
        {
            rows.Row(recording.Worst, TerminalText.Clean(recording.Id), recording.ChannelCounts, Why(recording));
        }

        text.Append('\n');
    }

    private static ImmutableArray<string> Why(RecordingDigest recording)
    {
        string reasons = RecordingReasons.Of(recording);
        return
        [
            .. reasons.Length == 0 ? [] : new[] { reasons },
            .. recording.IsDecided ? new[] { DecisionWords.Short } : [],
            .. RecordingReasons.Also(recording) is { } also ? new[] { $"also: {also}, see report.html" } : [],
        ];
    }
}
