using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Console;

/// <summary>The result for the terminal: read in five seconds, worst first.</summary>
public static class VerdictTable
{
    /// <summary>Recordings whose channels are listed when there are several; the rest is counted.</summary>
    public const int DetailedRecordings = 10;

    private const int MostWarnings = 3;

    /// <summary>The whole text, each line ended by LF.</summary>
    /// <param name="run">The results.</param>
    /// <param name="folder">The output folder as the user gave it.</param>
    /// <param name="style">What the terminal can show.</param>
    public static string Render(AuditRun run, string folder, TerminalStyle style)
    {
        StringBuilder text = new();
        ImmutableArray<RecordingResult> recordings = WorstFirst.Recordings(run.Recordings);
        if (recordings.Length > 1)
        {
            RecordingLines.Write(text, recordings, style);
        }

        // A recording that passes needs no lines of its own among many.
        ImmutableArray<RecordingResult> detailed = recordings.Length == 1
            ? recordings
            : [.. recordings.Where(recording => WorstFirst.Worst(recording) != Grade.Pass).Take(DetailedRecordings)];
        foreach (RecordingResult recording in detailed)
        {
            ChannelLines.Write(text, recording, style);
        }

        foreach (UnreadRecording unread in run.Unread)
        {
            Line(text, $"could not be read: {TerminalText.Clean(unread.Path)}", style);
        }

        Line(text, RunSummary.Of(run), style);
        VerdictCounts trials = VerdictCounts.OfTrials(run.Recordings);
        if (trials.Total > 0)
        {
            Line(text, $"Trials, counted once a channel: {RunSummary.InWords(trials)}.", style);
        }

        AddWarnings(text, run, style);

        Line(text, $"Written to {TerminalText.Clean(folder)}: report.html, verdicts.tsv, channels.tsv, conditions.tsv", style);
        return TerminalText.Plain(text.ToString(), style);
    }

    // What a file gave cause for may be more than any verdict says: a recording that was cut short passes like any other.
    private static void AddWarnings(StringBuilder text, AuditRun run, TerminalStyle style)
    {
        ImmutableArray<Warning> warnings = [.. run.Warnings, .. run.Recordings.SelectMany(recording => recording.Warnings)];
        foreach (Warning warning in warnings.Take(MostWarnings))
        {
            Line(text, $"warning: {TerminalText.Clean(warning.File)}, {TerminalText.Clean(warning.Place)}: {TerminalText.Clean(warning.Message)}", style);
        }

        if (warnings.Length > MostWarnings)
        {
            Line(text, $"{Quantities.Many(warnings.Length - MostWarnings, "more warning")}: see \"Also noticed\" in report.html.", style);
        }
    }

    private static void Line(StringBuilder text, string line, TerminalStyle style)
    {
        foreach (string part in TerminalText.WrapWhole(line, style.Columns))
        {
            text.Append(part).Append('\n');
        }
    }
}
