using System.Collections.Immutable;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Shares;
using ChannelAudit.Results;

namespace ChannelAudit.Cli.Screening;

/// <summary>The results of a run as files in a folder.</summary>
internal sealed class AuditOutput : IScreenOutput
{
    private readonly AuditRun _run;
    private readonly AuditFolder _place;
    private readonly RunWriter _writer;
    private readonly FigureChoice _figures;
    private readonly string _folder;
    private readonly TerminalStyle _style;
    private readonly Func<string, ImmutableArray<FigureFile>>? _drawn;

    /// <summary>Opens it.</summary>
    /// <param name="run">With what recordings are audited.</param>
    /// <param name="folder">The folder as the user gave it.</param>
    /// <param name="figures">Pictures to draw.</param>
    /// <param name="isAlone">Whether the run is over one recording.</param>
    /// <param name="style">What the terminal can show.</param>
    /// <param name="drawn">Pictures of a recording, by its id, that take the place of drawn ones; null: they are drawn.</param>
    /// <param name="withParquet">Whether tables are written as Parquet files too.</param>
    public AuditOutput(
        AuditRun run, string folder, FigureChoice figures, bool isAlone, TerminalStyle style, Func<string, ImmutableArray<FigureFile>>? drawn = null, bool withParquet = false)
    {
        (_run, _figures, _folder, _style, _drawn) = (run, figures, folder, style, drawn);
        _place = AuditFolder.Open(folder);
        _writer = new RunWriter(run, _place, isAlone, draws: figures != FigureChoice.None, withParquet);
    }

    /// <inheritdoc/>
    public bool HasAudit => _place.HasAudit;

    /// <inheritdoc/>
    public ImmutableArray<string> OutdatedStudies => _writer.OutdatedStudies;

    /// <inheritdoc/>
    public ImmutableArray<string> NotAmong(IEnumerable<string> ids) => _writer.NotAmong(ids);

    /// <inheritdoc/>
    public RunDigest? AsBefore(IReadOnlyList<(string Id, RecordingStamp Stamp)> recordings, int jobs) =>
        _place.AsBefore(recordings, _writer.Needed, _writer.WritesParquet, check => InOrder.Run(check, jobs, one => one()).All(isSame => isSame));

    /// <inheritdoc/>
    public RecordingResult? TakeOver(string id, RecordingStamp stamp) => _place.TakeOver(id, stamp, _writer.Needed);

    /// <summary>Takes the files of a recording out of a share.</summary>
    /// <returns>Whether they were there, whole and made from these inputs.</returns>
    public bool Import(SharedRecording recording) => _place.Import(recording.Id, recording.Stamp, recording.Folder);

    /// <inheritdoc/>
    public void Keep(RecordingResult recording, RecordingStamp stamp, CancellationToken cancel) => _writer.Keep(recording, stamp, _drawn?.Invoke(recording.Id) ?? RecordingPictures.Of(recording, _figures, cancel));

    /// <inheritdoc/>
    public void Add(RecordingResult recording, RecordingStamp stamp) => _writer.Add(recording, stamp);

    /// <inheritdoc/>
    public RunDigest Finish(ImmutableArray<UnreadRecording> unread, CancellationToken cancel) => _writer.Finish(unread, cancel).Digest;

    /// <inheritdoc/>
    public void Print(RunDigest digest, bool isUnchanged, TextWriter output) =>
        output.Write(VerdictTable.Render(_run, digest, _folder, _style, isUnchanged, _writer.WritesParquet));

    /// <inheritdoc/>
    public void Dispose()
    {
        _writer.Dispose();
        _place.Dispose();
    }
}
