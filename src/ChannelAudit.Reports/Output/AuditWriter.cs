using System.Collections.Immutable;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Output;

/// <summary>Writes everything that an audit leaves behind.</summary>
public static class AuditWriter
{
    /// <summary>Writes all files of a run; an audit that stands there is brought up to date, any other non-empty folder is refused.</summary>
    /// <param name="run">The results.</param>
    /// <param name="folder">The output folder.</param>
    /// <param name="figures">Draws the pictures of a recording; null for none.</param>
    /// <param name="cancel">Ends the writing; nothing has changed then.</param>
    /// <param name="more">Files beside those of every audit; none when left out.</param>
    /// <param name="pilot">What a pilot shows first on the page; null for none.</param>
    /// <returns>The files written, in order; <c>audit.json</c> is the last.</returns>
    /// <exception cref="ArgumentException">When a recording's id is no safe name of a folder.</exception>
    /// <exception cref="ChannelAuditException">When the folder is not ours, or the operating system refuses.</exception>
    public static ImmutableArray<OutputFile> Write(
        AuditRun run, string folder, FigureMaker? figures, CancellationToken cancel, IReadOnlyList<ExtraFile>? more = null, PilotSection? pilot = null)
    {
        ImmutableArray<string> previous = PreviousAudit.Files(folder);
        using OutputBatch batch = new(folder);
        ResultOrigin origin = new(run.Version, run.Criteria.Sha256, run.Setup.Sha256);
        ReportFigures drawn = new();
        foreach (RecordingResult recording in run.Recordings)
        {
            cancel.ThrowIfCancellationRequested();
            AddRecording(batch, recording, origin);
            ImmutableArray<FigureFile> pictures = figures?.Invoke(recording, cancel) ?? [];
            foreach (FigureFile picture in pictures)
            {
                batch.Add(Place(recording.Id, picture.Name), picture.Png.Span);
            }

            drawn.Add(recording.Id, pictures);
        }

        batch.Add("verdicts.tsv", VerdictsTsv.Render(run.Recordings));
        batch.Add("channels.tsv", ChannelsTsv.Render(run.Recordings));
        batch.Add("conditions.tsv", ConditionsTsv.Render(run.Recordings));
        batch.Add("report.html", ReportPage.Render(run, drawn, pilot));
        foreach (ExtraFile file in more ?? [])
        {
            batch.Add(file.Path, file.Bytes.Span);
        }

        HashSet<string> kept = [.. (more ?? []).Where(file => file.OutlivesAudits).Select(file => file.Path)];
        batch.Add(PreviousAudit.FileName, AuditJson.Render(run, [.. batch.Files.Where(file => !kept.Contains(file.Path))]));
        cancel.ThrowIfCancellationRequested();
        batch.Commit(() => StaleFiles.Remove(folder, previous, batch.Files.Select(file => file.Path)));
        return batch.Files;
    }

    /// <summary>Where a file of a recording stands, relative to the folder.</summary>
    /// <exception cref="ArgumentException">When the id is no safe name of a folder.</exception>
    public static string Place(string id, string file) => SafePath.IsName(id)
        ? $"recordings/{id}/{file}"
        : throw new ArgumentException($"Not a safe name of a folder: '{id}'.", nameof(id));

    private static void AddRecording(OutputBatch batch, RecordingResult recording, ResultOrigin origin)
    {
        batch.Add(Place(recording.Id, "result.json"), ResultWriter.Render(recording, origin));
        batch.Add(Place(recording.Id, "measures.tsv"), MeasuresTsv.Render(recording));
        batch.Add(Place(recording.Id, "pairs.tsv"), PairsTsv.Render(recording));
    }
}
