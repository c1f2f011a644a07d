using System.Collections.Immutable;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Output;

/// <summary>The files that every run writes for a recording, the same wherever it is audited.</summary>
internal static class RecordingContent
{
    /// <summary>The name of a recording's page.</summary>
    public const string PageName = "report.html";

    /// <summary>The name of the file with everything known about a recording.</summary>
    public const string ResultName = "result.json";

    private const string MeasuresName = "measures.tsv";
    private const string PairsName = "pairs.tsv";

    /// <summary>What they are called, beside pictures.</summary>
    /// <param name="withPage">Whether there is a page of the recording alone.</param>
    public static ImmutableArray<string> Names(bool withPage) => withPage ? [ResultName, MeasuresName, PairsName, PageName] : [ResultName, MeasuresName, PairsName];

    /// <summary>The files of a finished recording.</summary>
    /// <param name="run">With what it was audited.</param>
    /// <param name="recording">The result as computed.</param>
    /// <param name="shown">The result as its page shows it, with decisions; null for no page.</param>
    /// <param name="pictures">Its pictures, in the order in which they are listed.</param>
    /// <exception cref="ArgumentException">When its id is no safe name of a folder.</exception>
    public static IReadOnlyList<(string Name, Action<Stream> Write)> Of(AuditRun run, RecordingResult recording, RecordingResult? shown, ImmutableArray<FigureFile> pictures)
    {
        AuditWriter.RequireSafe(recording.Id);
        ResultOrigin origin = new(run.Version, run.Criteria.Sha256, run.Setup.Sha256);
        List<(string, Action<Stream>)> files =
        [
            (ResultName, stream => ResultWriter.Write(recording, origin, stream)),
            (MeasuresName, stream => MeasuresTsv.Write(recording, stream)),
            (PairsName, stream => PairsTsv.Write(recording, stream)),
        ];
        if (shown is not null)
        {
            files.Add((PageName, stream => stream.Write(Page(run, shown, pictures))));
        }

        files.AddRange(pictures.Select(picture => (picture.Name, (Action<Stream>)(stream => stream.Write(picture.Png.Span)))));
        return files;
    }

    /// <summary>The page of a recording of several.</summary>
    public static byte[] Page(AuditRun run, RecordingResult shown, ImmutableArray<FigureFile> pictures) =>
        ReportPage.OfRecording(run with { Warnings = [] }, shown, ReportFigures.Beside(pictures));
}
