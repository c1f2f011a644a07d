using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Criteria;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Console;

/// <summary>The result for the terminal: read in five seconds, worst first.</summary>
public static class VerdictTable
{
    private const int MostWarnings = 3;

    /// <summary>The whole text, each line ended by LF.</summary>
    /// <param name="run">With what the recordings were audited.</param>
    /// <param name="digest">The results; when there are several, channels are listed of the worst that did not pass.</param>
    /// <param name="folder">The output folder as the user gave it.</param>
    /// <param name="style">What the terminal can show.</param>
    /// <param name="isUnchanged">Whether all of it stood there before.</param>
    /// <param name="withParquet">Whether tables stand there as Parquet files too.</param>
    public static string Render(AuditRun run, RunDigest digest, string folder, TerminalStyle style, bool isUnchanged = false, bool withParquet = false)
    {
        StringBuilder text = new();
        if (digest.Recordings.Length > 1)
        {
            RecordingLines.Write(text, RecordingDigest.WorstFirst(digest.Recordings), style);
            text.Append(StudyLines.Render(digest.Odd, style));
        }

        // A recording that passes needs no lines of its own among many.
        foreach (RecordingResult recording in digest.Detailed)
        {
            ChannelLines.Write(text, recording, style, digest.Recordings.Length > 1);
        }

        foreach (UnreadRecording unread in digest.Unread)
        {
            Line(text, $"could not be read: {TerminalText.Clean(unread.Path)}", style);
        }

        Line(text, RunSummary.Of(digest), style);
        if (digest.Trials.Total > 0)
        {
            string byRule = digest.Recordings.Any(recording => recording.IsDecided) ? $" By rule alone: {RunSummary.InWords(digest.ComputedTrials)}." : string.Empty;
            Line(text, $"Trials, counted once a channel: {RunSummary.InWords(digest.Trials)}.{byRule}", style);
        }

        if (DecisionWords.Count(digest.Decisions) is { } decisions)
        {
            Line(text, decisions, style);
        }

        AddWarnings(text, [.. run.Warnings, .. digest.Decisions?.Warnings ?? [], .. digest.Recordings.SelectMany(WithPath)], style);

        AddFreeze(text, run.Criteria, style);
        string written = isUnchanged ? "Nothing has changed since it was written to" : "Written to";
        Line(text, $"{written} {TerminalText.Clean(folder)}: report.html, verdicts.tsv, channels.tsv, conditions.tsv{(withParquet ? ", verdicts.parquet, measures.parquet, pairs.parquet" : string.Empty)}", style);
        return TerminalText.Plain(text.ToString(), style);
    }

    // Among folders of participants the name of a file alone says nothing.
    private static IEnumerable<Warning> WithPath(RecordingDigest recording)
    {
        string name = recording.Path[(recording.Path.LastIndexOf('/') + 1)..];
        return recording.Warnings.Select(warning => warning with
        {
            File = string.Equals(warning.File, name, StringComparison.Ordinal) ? recording.Path : string.Equals(name, recording.Path, StringComparison.Ordinal) ? warning.File : $"{recording.Path}, {warning.File}",
        });
    }

    // What a file gave cause for may be more than any verdict says: a recording that was cut short passes like any other.
    private static void AddWarnings(StringBuilder text, ImmutableArray<Warning> warnings, TerminalStyle style)
    {
        foreach (Warning warning in warnings.Take(MostWarnings))
        {
            Line(text, $"warning: {TerminalText.Clean(warning.File)}, {TerminalText.Clean(warning.Place)}: {TerminalText.Clean(warning.Message)}", style);
        }

        if (warnings.Length > MostWarnings)
        {
            Line(text, $"{Quantities.Many(warnings.Length - MostWarnings, "more warning")}: see \"Also noticed\" in report.html.", style);
        }
    }

    // The defaults are never frozen and need no line here; the report and the methods paragraph say so.
    private static void AddFreeze(StringBuilder text, AuditCriteria criteria, TerminalStyle style)
    {
        if (criteria.FileName is null)
        {
            return;
        }

        Line(text, $"Limits: {TerminalText.Clean(FreezeWords.Of(criteria))}.", style);
        foreach (string difference in criteria.Frozen?.Differences ?? [])
        {
            Line(text, $"  {TerminalText.Clean(difference)}", style);
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
