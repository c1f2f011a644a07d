using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Findings;
using ChannelAudit.Impedance;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Console;

/// <summary>The channels of one recording, worst first: verdict, trials, reasons with their key number, what was not assessed.</summary>
internal static class ChannelLines
{
    private const int LongestName = 20;

    /// <summary>Writes the recording's head, its channels, and a blank line.</summary>
    public static void Write(StringBuilder text, RecordingResult recording, TerminalStyle style)
    {
        string head = $"{TerminalText.Clean(recording.Id)}: {recording.Format}, {Quantities.Clock(recording.DurationS)} long, "
            + $"{Quantities.Many(recording.Channels.Length, "channel")}, {Quantities.Many(recording.Trials.Length, "trial")} from {recording.TrialsFrom}";
        foreach (string line in TerminalText.Wrap(head, style.Columns))
        {
            text.Append(line).Append('\n');
        }

        IEnumerable<string> names = recording.Channels.Select(channel => TerminalText.Clean(channel.Name));
        VerdictRows rows = new(text, "channel", "trials", names, LongestName, style);
        rows.Head("verdict");
        foreach (ChannelResult channel in WorstFirst.Channels(recording))
        {
            VerdictCounts trials = VerdictCounts.OfTrials(recording, channel);
            rows.Row(FinalVerdict.OfChannel(recording, channel), TerminalText.Clean(channel.Name), trials, Why(recording, channel));
        }

        if (recording.Impedance is { } impedance)
        {
            foreach (string line in TerminalText.Wrap(Readings(impedance, style), style.Columns))
            {
                text.Append(line).Append('\n');
            }
        }

        foreach (Finding odd in recording.Information.Where(finding => string.Equals(finding.Reason, ReasonCode.Events, StringComparison.Ordinal)))
        {
            foreach (string line in TerminalText.Wrap($"events, changes no verdict: {TerminalText.Clean(odd.Text)}", style.Columns))
            {
                text.Append(line).Append('\n');
            }
        }

        text.Append('\n');
    }

    // Below the verdicts, not among them.
    private static string Readings(ImpedanceReport impedance, TerminalStyle style) => "impedance, graded apart: " + string.Join(", ", impedance.Sites
        .OrderByDescending(site => ImpedanceGradeWords.Urgency(site.Grade))
        .Select(site => $"{TerminalText.Clean(site.Name)} {(style.Ascii ? ImpedanceGradeWords.AsciiShape(site.Grade) : ImpedanceGradeWords.Shape(site.Grade))} {ImpedanceGradeWords.Word(site.Grade)}"));

    private static ImmutableArray<string> Why(RecordingResult recording, ChannelResult channel)
    {
        string[] decided = FinalVerdict.DecisionOn(recording, channel) is { } decision ? [TerminalText.Clean(DecisionWords.Of(decision.Decision, channel.Verdict))] : [];
        string[] reasons = [.. decided, .. ReasonPhrase.All(recording, channel).Select(TerminalText.Clean)];
        string[] gaps = [.. GapGroup.Of(channel)
            .GroupBy(gap => (gap.Cause, gap.WholeRecording, Trials: gap.WholeRecording ? 0 : gap.Trials.Length))
            .Select(group => TerminalText.Clean($"not assessed{Where(group.First())}: {Names(group)} ({group.Key.Cause})"))];
        return reasons.Length + gaps.Length == 0 ? ["nothing found"] : [.. reasons, .. gaps];
    }

    private static string Where(GapGroup gap) => gap.WholeRecording
        ? string.Empty
        : $" in {gap.Trials.Length.Plain()} of {Quantities.Many(gap.Channel.Cells.Length, "trial")}";

    private static string Names(IEnumerable<GapGroup> gaps) => string.Join(", ", gaps.Select(gap => ReasonWords.For(gap.Reason).Name));
}
