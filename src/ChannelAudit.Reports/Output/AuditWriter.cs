using System.Collections.Immutable;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Output;

/// <summary>Writes an audit whose results are all in memory.</summary>
public static class AuditWriter
{
    /// <summary>Writes all files of a run; an audit that stands there is brought up to date, any other non-empty folder is refused.</summary>
    /// <param name="run">With what the recordings were audited.</param>
    /// <param name="recordings">The results by id, ordinal order.</param>
    /// <param name="folder">The output folder.</param>
    /// <param name="figures">Draws the pictures of a recording; null for none.</param>
    /// <param name="cancel">Ends the writing; nothing has changed then.</param>
    /// <param name="more">Files beside those of every audit; none when left out.</param>
    /// <param name="pilot">What a pilot shows first on the page; null for none.</param>
    /// <param name="unread">Recordings that could not be read; none when left out.</param>
    /// <returns>The files written, in order; <c>audit.json</c> is the last.</returns>
    /// <exception cref="ArgumentException">When a recording's id is no safe name of a folder.</exception>
    /// <exception cref="ChannelAuditException">When the folder is not ours, or the operating system refuses.</exception>
    public static ImmutableArray<OutputFile> Write(
        AuditRun run,
        ImmutableArray<RecordingResult> recordings,
        string folder,
        FigureMaker? figures,
        CancellationToken cancel,
        IReadOnlyList<ExtraFile>? more = null,
        PilotSection? pilot = null,
        IReadOnlyList<UnreadRecording>? unread = null)
    {
        using AuditFolder place = AuditFolder.Open(folder);
        try
        {
            using RunWriter writer = new(run, place, recordings.Length == 1);
            foreach (RecordingResult recording in recordings)
            {
                cancel.ThrowIfCancellationRequested();
                writer.Keep(recording, RecordingStamp.None, figures?.Invoke(recording, cancel) ?? []);
                writer.Add(recording, RecordingStamp.None);
            }

            return writer.Finish([.. unread ?? []], cancel, more, pilot).Files;
        }
        finally
        {
            // Results in memory are made again at once: nothing need wait for another run.
            place.Clear();
        }
    }

    /// <summary>Where a file of a recording stands, relative to the folder.</summary>
    /// <exception cref="ArgumentException">When the id is no safe name of a folder.</exception>
    public static string Place(string id, string file)
    {
        RequireSafe(id);
        return $"recordings/{id}/{file}";
    }

    /// <summary>Refuses an id that is no safe name of a folder.</summary>
    internal static void RequireSafe(string id)
    {
        if (!SafePath.IsName(id))
        {
            throw new ArgumentException($"Not a safe name of a folder: '{id}'.", nameof(id));
        }
    }
}
