using System.Collections.Immutable;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Fairness;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Methods;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Reports.Silence;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Output;

/// <summary>Writes a run: each recording as it is finished, the tables over all while they come in, and everything into its place at the end.</summary>
/// <remarks><see cref="Keep"/> may be called on several threads, each with recordings of its own; the rest belongs to one thread.</remarks>
public sealed class RunWriter : IDisposable
{
    private readonly AuditRun _run;
    private readonly AuditFolder _folder;
    private readonly bool _isAlone;
    private readonly bool _draws;
    private readonly SensitivityTally _sensitivity;
    private readonly KeptStudies _studies;
    private readonly RunCollector _collector = new();
    private readonly MethodsTally _methods = new();
    private readonly List<string> _ids = [];
    private readonly GrowingTable<TsvWriter> _verdicts;
    private readonly GrowingTable<TsvWriter> _channels;
    private readonly GrowingTable<TsvWriter> _conditions;
    private readonly ParquetTables? _parquet;

    /// <summary>Starts a run.</summary>
    /// <param name="run">With what the recordings are audited.</param>
    /// <param name="folder">Where results go.</param>
    /// <param name="isAlone">Whether it is over one recording: then its page is the report.</param>
    /// <param name="draws">Whether the picture of the run is drawn.</param>
    /// <param name="withParquet">Whether tables are written as Parquet files too.</param>
    public RunWriter(AuditRun run, AuditFolder folder, bool isAlone, bool draws = false, bool withParquet = false)
    {
        (_run, _folder, _isAlone, _draws) = (run, folder, isAlone, draws);
        _sensitivity = new SensitivityTally(run.Criteria);
        _studies = new KeptStudies(folder.FolderPath);
        _verdicts = Table("verdicts.tsv", TableColumns.Verdicts);
        _channels = Table("channels.tsv", TableColumns.Channels);
        _conditions = Table("conditions.tsv", TableColumns.Conditions);
        _parquet = withParquet ? new ParquetTables(run, folder) : null;
    }

    /// <summary>Whether tables are written as Parquet files too.</summary>
    public bool WritesParquet => _parquet is not null;

    /// <summary>Files that every recording of the run has, beside pictures.</summary>
    public IReadOnlyCollection<string> Needed => FilesNeeded(_isAlone);

    /// <summary>Files that every recording of a run has, beside pictures.</summary>
    /// <param name="isAlone">Whether the run is over one recording.</param>
    public static IReadOnlyCollection<string> FilesNeeded(bool isAlone) => RecordingContent.Names(withPage: !isAlone);

    /// <summary>Writes the files of a finished recording, where they wait for the end of the run.</summary>
    /// <param name="recording">The result.</param>
    /// <param name="stamp">From what it was made.</param>
    /// <param name="pictures">Its pictures, in the order in which they are listed.</param>
    /// <exception cref="ArgumentException">When its id is no safe name of a folder.</exception>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Keep(RecordingResult recording, RecordingStamp stamp, ImmutableArray<FigureFile> pictures)
    {
        _folder.Write(recording.Id, stamp, RecordingContent.Of(_run, recording, _isAlone ? null : Decided(recording), pictures));
    }

    /// <summary>Adds a recording that was kept or taken over, in the order of the tables, with the decisions about it.</summary>
    /// <param name="computed">The result.</param>
    /// <param name="stamp">From what it was made.</param>
    public void Add(RecordingResult computed, RecordingStamp stamp)
    {
        RecordingResult recording = Decided(computed);
        _ids.Add(recording.Id);
        if (!_isAlone && recording.Decisions is not null)
        {
            // A page that was taken over may be older than the last decision.
            _folder.Replace(recording.Id, RecordingContent.PageName, RecordingContent.Page(_run, recording, PicturesOf(recording.Id)));
        }

        _verdicts.Add(table => VerdictsTsv.AddRows(table, recording));
        _channels.Add(table => ChannelsTsv.AddRows(table, recording));
        _conditions.Add(table => ConditionsTsv.AddRows(table, recording));
        _parquet?.Add(recording);
        _collector.Add(recording, stamp);
        _methods.Add(recording);
        _sensitivity.Add(recording.Sensitivity);
        _studies.Add(_run, recording);
    }

    /// <summary>Recordings whose study of planted faults is of other inputs, and goes at the end of the run.</summary>
    public ImmutableArray<string> OutdatedStudies => _studies.Outdated;

    /// <summary>Recordings of the audit that stands in the folder which a run is not over: their results go at its end.</summary>
    /// <param name="ids">Recordings of the run.</param>
    public ImmutableArray<string> NotAmong(IEnumerable<string> ids) => [.. _folder.Previous.Recordings.Select(recording => recording.Id).Except(ids, StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>Puts everything into its place, <c>audit.json</c> last, and takes away what an earlier audit wrote and this one does not.</summary>
    /// <param name="unread">Recordings that could not be read.</param>
    /// <param name="cancel">Ends the writing; nothing has changed then.</param>
    /// <param name="more">Files beside those of every audit.</param>
    /// <param name="pilot">What a pilot shows first on its page; null for none.</param>
    /// <returns>The run in short, and the files written.</returns>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public (RunDigest Digest, ImmutableArray<OutputFile> Files) Finish(
        ImmutableArray<UnreadRecording> unread, CancellationToken cancel, IReadOnlyList<ExtraFile>? more = null, PilotSection? pilot = null)
    {
        RunDigest digest = _collector.Digest(unread, _folder.Decisions);
        using OutputBatch batch = new(_folder.FolderPath);
        foreach (string id in _ids)
        {
            _folder.HandTo(batch, id);
        }

        _verdicts.HandTo(batch);
        _channels.HandTo(batch);
        _conditions.HandTo(batch);
        _parquet?.HandTo(batch);
        SensitivitySection? sensitivity = pilot is null ? AddSensitivity(batch) : null;
        batch.Add("report.html", _isAlone && digest.Detailed.Length == 1 ? PageOfOne(digest, pilot, sensitivity) : ReportPage.OfStudy(_run, digest, sensitivity, _studies.Kept));
        if (pilot is null)
        {
            AddFairness(batch, digest.Fairness!);
            AddMethods(batch, unread.Length, digest);
        }

        foreach (ExtraFile file in more ?? [])
        {
            batch.Add(file.Path, file.Bytes.Span);
        }

        HashSet<string> kept = [.. (more ?? []).Where(file => file.OutlivesAudits).Select(file => file.Path)];
        batch.Add(PreviousAudit.FileName, AuditJson.Render(_run, digest, [.. batch.Files.Where(file => !kept.Contains(file.Path))]));
        cancel.ThrowIfCancellationRequested();
        batch.CommitListed(StaleFiles.Of([.. _folder.Previous.Files.Select(file => file.Path)], batch.Files.Select(file => file.Path)));
        _studies.RemoveOutdated();
        _folder.Clear();
        return (digest, batch.Files);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _verdicts.Dispose();
        _channels.Dispose();
        _conditions.Dispose();
        _parquet?.Dispose();
    }

    private static void AddFairness(OutputBatch batch, FairnessReport fairness)
    {
        batch.Add(FairnessTsv.FileName, FairnessTsv.Render(fairness));
        batch.Add(FairnessTsv.SharesFileName, FairnessTsv.RenderShares(fairness));
    }

    private void AddMethods(OutputBatch batch, int unread, RunDigest digest)
    {
        (_methods.Unread, _methods.Fairness, _methods.Odd) = (unread, digest.Fairness, digest.Odd);
        MethodsOrigin origin = new(
            _run.Version, _run.Criteria, new StoredInput(_run.Setup.FileName, _run.Setup.Sha256), new StoredInput(_run.Impedance?.FileName, _run.Impedance?.Sha256));
        batch.Add(MethodsText.FileName, MethodsText.Render(_methods, origin));
        batch.Add(MethodsJson.FileName, MethodsJson.Render(_methods, origin));
    }

    private RecordingResult Decided(RecordingResult recording) => recording.With(_folder.Decisions, _run.Criteria.Sha256);

    private SensitivitySection AddSensitivity(OutputBatch batch)
    {
        batch.Add(SensitivityTsv.FileName, SensitivityTsv.Render(_sensitivity));
        byte[]? picture = _draws ? SensitivityFigure.Render(_sensitivity, SensitivityFigure.Size) : null;
        if (picture is not null)
        {
            batch.Add(SensitivityFigure.FileName, picture);
        }

        return new SensitivitySection(_sensitivity, picture);
    }

    private byte[] PageOfOne(RunDigest digest, PilotSection? pilot, SensitivitySection? sensitivity)
    {
        RecordingResult recording = digest.Detailed[0];
        ReportFigures figures = ReportFigures.Above(recording.Id, PicturesOf(recording.Id));
        return ReportPage.OfRecording(_run, recording, figures, pilot, digest.Decisions, pilot is null ? digest.Fairness : null, sensitivity, _studies.Kept);
    }

    private ImmutableArray<FigureFile> PicturesOf(string id) =>
    [
        .. _folder.FilesOf(id).Where(name => name.EndsWith(".png", StringComparison.Ordinal)).Select(name => new FigureFile(name, _folder.Read(id, name))),
    ];

    private GrowingTable<TsvWriter> Table(string name, ImmutableArray<string> columns) => new(name, _folder.PlaceOfTable(name), stream => new TsvWriter(columns, sink: stream.Write));
}
