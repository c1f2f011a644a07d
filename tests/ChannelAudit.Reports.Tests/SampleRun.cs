using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Criteria;
using ChannelAudit.Impedance;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Results;
using ChannelAudit.Setup;

namespace ChannelAudit.Reports.Tests;

/// <summary>A run with its results in memory, and everything that is made of it.</summary>
internal sealed record SampleRun(AuditRun Audit, ImmutableArray<RecordingResult> Recordings)
{
    private static readonly byte[] Png = [0x89, 0x50, 0x4E, 0x47];

    public string Version => Audit.Version;

    public AuditCriteria Criteria => Audit.Criteria;

    public StudySetup Setup => Audit.Setup;

    public ImpedanceLog? Impedance => Audit.Impedance;

    public ImmutableArray<UnreadRecording> Unread { get; init; } = [];

    public RunDigest Digest
    {
        get
        {
            RunCollector collector = new();
            foreach (RecordingResult recording in Recordings)
            {
                collector.Add(recording, new RecordingStamp(new string('7', 64), "summary"));
            }

            return collector.Digest(Unread);
        }
    }

    public byte[] Json(params ImmutableArray<OutputFile> files) => AuditJson.Render(Audit, Digest, files);

    public string Screen(string folder, TerminalStyle style) => VerdictTable.Render(Audit, Digest, folder, style);

    public ImmutableArray<OutputFile> Write(string folder, FigureMaker? figures, CancellationToken cancel) => AuditWriter.Write(Audit, Recordings, folder, figures, cancel, unread: Unread);

    /// <summary>The page over all, or of the only recording.</summary>
    public string Report(byte[]? ribbon = null) => Encoding.UTF8.GetString(
        Recordings.Length == 1 ? ReportPage.OfRecording(Audit, Recordings[0], Ribbon(ReportFigures.Above, ribbon)) : ReportPage.OfStudy(Audit, Digest));

    /// <summary>The page of a recording among others.</summary>
    public string PageOf(string id, byte[]? ribbon = null) => Encoding.UTF8.GetString(
        ReportPage.OfRecording(Audit, Recordings.Single(one => string.Equals(one.Id, id, StringComparison.Ordinal)), Ribbon((_, figures) => ReportFigures.Beside(figures), ribbon)));

    /// <summary>The page over all and those of the recordings, each with a picture.</summary>
    public IEnumerable<string> AllPages() => Recordings.Select(recording => PageOf(recording.Id, Png)).Prepend(Report(Png));

    private ReportFigures Ribbon(Func<string, ImmutableArray<FigureFile>, ReportFigures> place, byte[]? png) =>
        place(Recordings[0].Id, png is null ? [] : [new FigureFile(FigureFile.SessionRibbon, png)]);
}
