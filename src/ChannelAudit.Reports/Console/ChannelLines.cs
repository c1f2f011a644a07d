using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Console;

/// <summary>The channels of one recording, worst first: verdict, trials, reasons with their key number, what was not assessed.</summary>
internal static class ChannelLines
{
    private const int VerdictColumns = 14;
    private const int LongestName = 20;
    private const int NumberColumns = 7;
    private const int FewestReasonColumns = 14;
    private const int FixedColumns = VerdictColumns + 2 + (3 * NumberColumns) + 2;

    /// <summary>Writes the recording's head, its channels, and a blank line.</summary>
    public static void Write(StringBuilder text, RecordingResult recording, TerminalStyle style)
    {
        string head = $"{TerminalText.Clean(recording.Id)}: {recording.Format}, {Quantities.Clock(recording.DurationS)} long, "
            + $"{Quantities.Many(recording.Channels.Length, "channel")}, {Quantities.Many(recording.Trials.Length, "trial")} from {recording.TrialsFrom}";
        foreach (string line in TerminalText.Wrap(head, style.Columns))
        {
            text.Append(line).Append('\n');
        }

        int name = NameColumns(recording, style);
        text.Append(TerminalText.Fit("verdict", VerdictColumns)).Append("  ").Append(TerminalText.Fit("channel", name))
            .Append(" reject  quest.   pass  why\n");
        foreach (ChannelResult channel in WorstFirst.Channels(recording))
        {
            WriteChannel(text, recording, channel, name, style);
        }

        text.Append('\n');
    }

    private static void WriteChannel(StringBuilder text, RecordingResult recording, ChannelResult channel, int name, TerminalStyle style)
    {
        VerdictCounts trials = VerdictCounts.OfTrials(recording, channel);
        text.Append(TerminalText.Verdict(FinalVerdict.OfChannel(recording, channel), style)).Append("  ")
            .Append(TerminalText.Fit(TerminalText.Clean(channel.Name), name));
        foreach (int count in new[] { trials.Reject, trials.Questionable, trials.Pass })
        {
            text.Append(count.Plain().PadLeft(NumberColumns));
        }

        int indent = FixedColumns + name;
        string between = "  ";
        foreach (string line in Why(recording, channel).SelectMany(why => TerminalText.Wrap(why, style.Columns - indent)))
        {
            text.Append(between).Append(line).Append('\n');
            between = new string(' ', indent);
        }
    }

    private static ImmutableArray<string> Why(RecordingResult recording, ChannelResult channel)
    {
        string[] reasons = [.. ReasonPhrase.All(recording, channel).Select(TerminalText.Clean)];
        string[] gaps = [.. GapGroup.Of(channel)
            .GroupBy(gap => (gap.Cause, gap.WholeRecording, Trials: gap.WholeRecording ? 0 : gap.Trials.Length))
            .Select(group => TerminalText.Clean($"not assessed{Where(group.First())}: {Names(group)} ({group.Key.Cause})"))];
        return reasons.Length + gaps.Length == 0 ? ["nothing found"] : [.. reasons, .. gaps];
    }

    private static string Where(GapGroup gap) => gap.WholeRecording
        ? string.Empty
        : $" in {gap.Trials.Length.Plain()} of {Quantities.Many(gap.Channel.Cells.Length, "trial")}";

    private static string Names(IEnumerable<GapGroup> gaps) => string.Join(", ", gaps.Select(gap => ReasonWords.For(gap.Reason).Name));

    private static int NameColumns(RecordingResult recording, TerminalStyle style)
    {
        int longest = recording.Channels.IsEmpty ? 0 : recording.Channels.Max(channel => TerminalText.Width(TerminalText.Clean(channel.Name)));
        return Math.Clamp(longest, "channel".Length, Math.Min(LongestName, style.Columns - FixedColumns - FewestReasonColumns));
    }
}
