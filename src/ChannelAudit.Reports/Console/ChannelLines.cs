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
    private const int MostAmongOthers = 12;
    private const int ManyAlike = 4;

    /// <summary>Writes the recording's head, its channels, and a blank line.</summary>
    /// <param name="text">Where to.</param>
    /// <param name="recording">The recording.</param>
    /// <param name="style">What the terminal can show.</param>
    /// <param name="isAmongOthers">Whether others follow: of many channels only the worst are shown then.</param>
    public static void Write(StringBuilder text, RecordingResult recording, TerminalStyle style, bool isAmongOthers)
    {
        string head = $"{TerminalText.Clean(recording.Id)}: {recording.Format}, {Quantities.Clock(recording.DurationS)} long, "
            + $"{Quantities.Many(recording.Channels.Length, "channel")}, {Quantities.Many(recording.Trials.Length, "trial")} from {recording.TrialsFrom}";
        foreach (string line in TerminalText.Wrap(head, style.Columns))
        {
            text.Append(line).Append('\n');
        }

        WriteChannels(text, recording, style, isAmongOthers ? MostAmongOthers : int.MaxValue);

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

    // What many channels share is said once below them.
    private static void WriteChannels(StringBuilder text, RecordingResult recording, TerminalStyle style, int most)
    {
        ChannelResult[] shown = [.. WorstFirst.Channels(recording).Take(most)];
        (string Gap, int Channels)[] shared =
        [
            .. recording.Channels.SelectMany(Gaps).GroupBy(gap => gap, StringComparer.Ordinal)
                .Where(group => group.Count() >= ManyAlike)
                .Select(group => (group.Key, group.Count())),
        ];
        HashSet<string> below = shared.Select(one => one.Gap).ToHashSet(StringComparer.Ordinal);
        VerdictRows rows = new(text, "channel", "trials", shown.Select(channel => TerminalText.Clean(channel.Name)), LongestName, style);
        rows.Head("verdict");
        foreach (ChannelResult channel in shown)
        {
            VerdictCounts trials = VerdictCounts.OfTrials(recording, channel);
            rows.Row(FinalVerdict.OfChannel(recording, channel), TerminalText.Clean(channel.Name), trials, Why(recording, channel, below));
        }

        string[] lines =
        [
            .. recording.Channels.Length > shown.Length ? new[] { $"and {Quantities.Many(recording.Channels.Length - shown.Length, "more channel")}: see report.html" } : [],
            .. shared.Select(one => $"{Quantities.Many(one.Channels, "channel")} {one.Gap}"),
        ];
        foreach (string line in lines.SelectMany(line => TerminalText.Wrap(line, style.Columns)))
        {
            text.Append(line).Append('\n');
        }
    }

    // Below the verdicts, not among them.
    private static string Readings(ImpedanceReport impedance, TerminalStyle style) => "impedance, graded apart: " + string.Join(", ", impedance.Sites
        .OrderByDescending(site => ImpedanceGradeWords.Urgency(site.Grade))
        .Select(site => $"{TerminalText.Clean(site.Name)} {(style.Ascii ? ImpedanceGradeWords.AsciiShape(site.Grade) : ImpedanceGradeWords.Shape(site.Grade))} {ImpedanceGradeWords.Word(site.Grade)}"));

    private static ImmutableArray<string> Why(RecordingResult recording, ChannelResult channel, HashSet<string> below)
    {
        string[] decided = FinalVerdict.DecisionOn(recording, channel) is { } decision ? [TerminalText.Clean(DecisionWords.Of(decision.Decision, channel.Verdict))] : [];
        string[] reasons = [.. decided, .. ReasonPhrase.All(recording, channel).Select(TerminalText.Clean)];
        string[] gaps = Gaps(channel);
        string[] own = [.. gaps.Where(gap => !below.Contains(gap))];
        return (reasons.Length + own.Length, gaps.Length) switch
        {
            (0, 0) => ["nothing found"],
            (0, _) => ["nothing found; not everything assessed, see below"],
            _ => [.. reasons, .. own],
        };
    }

    private static string[] Gaps(ChannelResult channel) =>
    [
        .. GapGroup.Of(channel)
            .GroupBy(gap => (gap.Cause, gap.WholeRecording, Trials: gap.WholeRecording ? 0 : gap.Trials.Length))
            .Select(group => TerminalText.Clean($"not assessed{Where(group.First())}: {Names(group)} ({group.Key.Cause})")),
    ];

    private static string Where(GapGroup gap) => gap.WholeRecording
        ? string.Empty
        : $" in {gap.Trials.Length.Plain()} of {Quantities.Many(gap.Channel.Cells.Length, "trial")}";

    private static string Names(IEnumerable<GapGroup> gaps) => string.Join(", ", gaps.Select(gap => ReasonWords.For(gap.Reason).Name));
}
