using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Silence;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Output;

/// <summary>The output folder of a run: the audit that stands there, and the recordings that this run has finished.</summary>
/// <remarks>Nothing that stands there changes before <see cref="RunWriter.Finish"/>. Dispose it to let the next run in.</remarks>
public sealed class AuditFolder : IDisposable
{
    private readonly UnfinishedRun _unfinished;
    private readonly Dictionary<string, (RecordingStamp Stamp, ImmutableArray<OutputFile> Files)> _standing;
    private readonly Dictionary<string, ImmutableArray<HeldFile>> _current = new(StringComparer.Ordinal);
    private readonly Lock _gate = new();

    private AuditFolder(string path, PreviousAudit previous, Ledger decisions, UnfinishedRun unfinished)
    {
        FolderPath = path;
        Previous = previous;
        Decisions = decisions;
        _unfinished = unfinished;
        ILookup<string, OutputFile> files = previous.Files
            .Where(file => file.Path.StartsWith("recordings/", StringComparison.Ordinal) && file.Path.Split('/').Length == 3)
            .ToLookup(file => file.Path.Split('/')[1], file => file with { Path = file.Path.Split('/')[2] }, StringComparer.Ordinal);
        _standing = previous.Recordings.ToDictionary(
            recording => recording.Id, recording => (recording.Stamp, files[recording.Id].ToImmutableArray()), StringComparer.Ordinal);
    }

    /// <summary>The folder.</summary>
    internal string FolderPath { get; }

    /// <summary>What the audit that stands there says of itself.</summary>
    internal PreviousAudit Previous { get; }

    /// <summary>What persons decided, as it stood when the folder was opened.</summary>
    internal Ledger Decisions { get; }

    /// <summary>Opens a new folder, an empty one, an audit, or one whose run was broken off.</summary>
    /// <exception cref="ChannelAuditException">
    /// When it holds something else, another run writes there, its ledger of decisions is not as it was written, or the operating system refuses.
    /// </exception>
    public static AuditFolder Open(string folder) => TryOpen(folder) ?? throw OutputErrors.AnotherRun(folder);

    /// <summary>Opens it like <see cref="Open"/>; null while another run writes there.</summary>
    /// <exception cref="ChannelAuditException">As for <see cref="Open"/>.</exception>
    public static AuditFolder? TryOpen(string folder)
    {
        // Refused before anything is made in there; what another run has changed meanwhile is read again behind the lock.
        _ = CommitJournal.IsIn(folder) ? null : PreviousAudit.Of(folder);
        UnfinishedRun? unfinished = null;
        try
        {
            unfinished = UnfinishedRun.TryOpen(folder);
            if (unfinished is null)
            {
                return null;
            }

            CommitJournal.CompleteLocked(folder);
            LeftPartials.Remove(folder);
            PreviousAudit previous = PreviousAudit.Of(folder);
            Ledger decisions = Ledger.Read(folder);
            decisions.RequireContinues(previous.Decisions?.Mark ?? LedgerMark.None, folder);
            AuditFolder opened = new(folder, previous, decisions, unfinished);
            unfinished = null;
            return opened;
        }
        finally
        {
            unfinished?.Dispose();
        }
    }

    /// <summary>Whether an audit stands here whose recordings could be taken over.</summary>
    public bool HasAudit => _standing.Count > 0;

    /// <summary>
    /// The run that stands here, if it is over just these recordings, from the same inputs and the same decisions, and every file of it is as it was written; else null.
    /// </summary>
    /// <param name="recordings">Ids and inputs.</param>
    /// <param name="needed">Names of the files that each must have.</param>
    /// <param name="withParquet">Whether it must have Parquet files; without, it must have none.</param>
    /// <param name="all">Whether all of some checks hold; they may be made on several threads.</param>
    public RunDigest? AsBefore(
        IReadOnlyList<(string Id, RecordingStamp Stamp)> recordings, IReadOnlyCollection<string> needed, bool withParquet, Func<IReadOnlyList<Func<bool>>, bool> all)
    {
        if (Previous.HasUnread || recordings.Count != _standing.Count || Decisions.Mark != (Previous.Decisions?.Mark ?? LedgerMark.None)
            || !Previous.Files.Any(file => string.Equals(file.Path, SensitivityTsv.FileName, StringComparison.Ordinal))
            || ParquetTables.AreAmong(Previous.Files) != withParquet)
        {
            return null;
        }

        List<Func<bool>> checks = [.. recordings.Select(one => (Func<bool>)(() => Stands(one.Id, one.Stamp, needed)))];
        checks.AddRange(Previous.Files.Where(file => !file.Path.Contains('/', StringComparison.Ordinal))
            .Select(file => (Func<bool>)(() => IsAsWritten(file))));
        checks.Add(() => ShowsStudies(recordings.Select(one => one.Id)));
        return all(checks)
            ? RunDigest.Of(Previous.Recordings, Previous.Odd, ReadStanding) with { Decisions = WithTorn(Previous.Decisions) }
            : null;
    }

    /// <summary>The result of a recording that was audited before from the same inputs; null when it must be audited.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="stamp">The inputs now.</param>
    /// <param name="needed">Names of the files that must be there.</param>
    public RecordingResult? TakeOver(string id, RecordingStamp stamp, IReadOnlyCollection<string> needed)
    {
        bool waits = true;
        ImmutableArray<OutputFile>? found = _unfinished.Find(id, stamp);
        if (found is null)
        {
            waits = false;
            found = _standing.TryGetValue(id, out (RecordingStamp Stamp, ImmutableArray<OutputFile> Files) standing) && standing.Stamp == stamp && AreAsWritten(id, standing.Files)
                ? standing.Files
                : null;
        }

        if (found is not { } files || !needed.All(name => files.Any(file => string.Equals(file.Path, name, StringComparison.Ordinal))))
        {
            return null;
        }

        try
        {
            RecordingResult result = waits ? ResultReader.Read(PlainFile.ReadAllBytes(_unfinished.Place(id, RecordingContent.ResultName)), RecordingContent.ResultName).Result : ReadStanding(id);
            if (result.Sensitivity is null)
            {
                return null;
            }

            Hold(id, files, waits);
            return result;
        }
        catch (Exception fault) when (fault is ChannelAuditException or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Takes the files of a recording out of a share, to wait for the end of the run.</summary>
    /// <returns>Whether they were there, whole and made from these inputs.</returns>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public bool Import(string id, RecordingStamp stamp, string share)
    {
        if (UnfinishedRun.FindIn(share, id, stamp) is not { } files)
        {
            return false;
        }

        return _unfinished.Write(id, stamp, [.. files.Select(file => (file.Path, (Action<Stream>)(stream => CopyOf(UnfinishedRun.PlaceIn(share, id, file.Path), stream))))]).SequenceEqual(files);
    }

    /// <summary>Writes the files of a recording to wait for the end of the run.</summary>
    internal void Write(string id, RecordingStamp stamp, IReadOnlyList<(string Name, Action<Stream> Write)> files) =>
        Hold(id, _unfinished.Write(id, stamp, files), waits: true);

    /// <summary>Puts other bytes in the place of a recording's file, unless they are the same.</summary>
    internal void Replace(string id, string name, ReadOnlySpan<byte> bytes)
    {
        ImmutableArray<HeldFile> files = Held(id);
        HeldFile held = files.Single(file => string.Equals(file.File.Path, name, StringComparison.Ordinal));
        if (string.Equals(held.File.Sha256, LedgerChain.HashOf(bytes), StringComparison.Ordinal))
        {
            return;
        }

        (OutputFile file, string place) = _unfinished.WriteAlone(id, name, bytes);
        Hold(id, files.Replace(held, new HeldFile(file, place)));
    }

    /// <summary>Where a growing table is written.</summary>
    internal string PlaceOfTable(string name) => _unfinished.Place(name);

    /// <summary>The names of a recording's files, in order.</summary>
    internal ImmutableArray<string> FilesOf(string id) => [.. Held(id).Select(file => file.File.Path)];

    /// <summary>The bytes of a recording's file, wherever it is now.</summary>
    internal byte[] Read(string id, string name) =>
        PlainFile.ReadAllBytes(Held(id).Single(file => string.Equals(file.File.Path, name, StringComparison.Ordinal)).WaitsAt ?? StandingPlace(id, name));

    /// <summary>Hands a recording's files to a batch: those that wait, and those that stand in their place.</summary>
    internal void HandTo(OutputBatch batch, string id)
    {
        foreach (HeldFile held in Held(id))
        {
            OutputFile placed = held.File with { Path = AuditWriter.Place(id, held.File.Path) };
            if (held.WaitsAt is { } place)
            {
                batch.Take(placed, place);
            }
            else
            {
                batch.Leave(placed);
            }
        }
    }

    /// <summary>Throws away what waits.</summary>
    internal void Clear() => _unfinished.Clear();

    /// <inheritdoc/>
    public void Dispose() => _unfinished.Dispose();

    private void Hold(string id, ImmutableArray<OutputFile> files, bool waits) =>
        Hold(id, [.. files.Select(file => new HeldFile(file, waits ? _unfinished.Place(id, file.Path) : null))]);

    // Other threads finish recordings while the files of one are asked for.
    private ImmutableArray<HeldFile> Held(string id)
    {
        lock (_gate)
        {
            return _current[id];
        }
    }

    private void Hold(string id, ImmutableArray<HeldFile> files)
    {
        lock (_gate)
        {
            _current[id] = files;
        }
    }

    /// <summary>Whether a recording stands here, unchanged, from these inputs and with those files; nothing is read of it but its bytes.</summary>
    private bool Stands(string id, RecordingStamp stamp, IReadOnlyCollection<string> needed) =>
        _standing.TryGetValue(id, out (RecordingStamp Stamp, ImmutableArray<OutputFile> Files) standing)
        && standing.Stamp == stamp
        && needed.All(name => standing.Files.Any(file => string.Equals(file.Path, name, StringComparison.Ordinal)))
        && AreAsWritten(id, standing.Files);

    // A study of planted faults that came since is to be on the page.
    private bool ShowsStudies(IEnumerable<string> ids)
    {
        string report = Path.Combine(FolderPath, "report.html");
        string page = File.Exists(report) && !PlainFile.IsEmpty(report) ? File.ReadAllText(report) : string.Empty;
        return ids.All(id => KeptStudies.IsShown(FolderPath, id, page));
    }

    private bool AreAsWritten(string id, ImmutableArray<OutputFile> files)
    {
        try
        {
            return !files.IsEmpty && files.All(file => SafePath.IsName(file.Path) && FileHash.Is(StandingPlace(id, file.Path), file.Sha256));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static void CopyOf(string file, Stream target)
    {
        using FileStream source = File.OpenRead(file);
        source.CopyTo(target);
    }

    // What cannot be read is not as it was written; the run that follows says why.
    private bool IsAsWritten(OutputFile file)
    {
        try
        {
            return SafePath.IsBelow(file.Path) && FileHash.Is(Path.Combine(FolderPath, file.Path), file.Sha256);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private RecordingResult ReadStanding(string id)
    {
        StoredResult stored = ResultReader.Read(PlainFile.ReadAllBytes(StandingPlace(id, RecordingContent.ResultName)), RecordingContent.ResultName);
        return stored.Result.With(Decisions, stored.Origin.CriteriaSha256);
    }

    private DecisionsDigest? WithTorn(DecisionsDigest? decisions) => Decisions.Torn is { } torn
        ? (decisions ?? new DecisionsDigest { Mark = LedgerMark.None }) with { Torn = torn }
        : decisions;

    private string StandingPlace(string id, string name) => Path.Combine(FolderPath, AuditWriter.Place(id, name));
}
