using System.Collections.Immutable;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Shares;

/// <summary>The folder of a share in the making: finished recordings wait there until all shares are put together.</summary>
/// <remarks>
/// <c>share.json</c> is written last and names all that belongs to it; each recording has its own list with hashes. A share that was broken off goes on from the recordings that are there.
/// Dispose it to let the next run in.
/// </remarks>
public sealed class ShareFolder : IDisposable
{
    private static readonly ImmutableArray<string> Endings = [".json", ".tsv", ".html", ".png", OutputBatch.PartialSuffix];

    private readonly AuditRun _run;
    private readonly SharePlan _plan;
    private readonly string _folder;
    private readonly UnfinishedRun _store;

    private ShareFolder(AuditRun run, SharePlan plan, string folder)
    {
        (_run, _plan, _folder) = (run, plan, folder);
        _store = UnfinishedRun.TryOpenShare(folder) ?? throw OutputErrors.AnotherRun(folder);
    }

    /// <summary>Opens a new folder, an empty one, or that of this share, finished or not.</summary>
    /// <param name="run">With what its recordings are audited.</param>
    /// <param name="plan">What it is a part of.</param>
    /// <param name="folder">The folder.</param>
    /// <exception cref="ChannelAuditException">When it holds something else, another run writes there, or the operating system refuses.</exception>
    public static ShareFolder Open(AuditRun run, SharePlan plan, string folder)
    {
        try
        {
            RequireOurs(plan.Share, folder);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw ShareErrors.CannotRead(folder, fault);
        }

        return new ShareFolder(run, plan, folder);
    }

    /// <summary>The result of a recording that was audited before from the same inputs; null when it must be audited.</summary>
    public RecordingResult? TakeOver(string id, RecordingStamp stamp)
    {
        try
        {
            return _store.Find(id, stamp) is { } files && RecordingContent.Names(withPage: !_plan.IsAlone).All(name => files.Any(file => string.Equals(file.Path, name, StringComparison.Ordinal)))
                ? ResultReader.Read(PlainFile.ReadAllBytes(_store.Place(id, RecordingContent.ResultName)), RecordingContent.ResultName).Result
                : null;
        }
        catch (Exception fault) when (fault is ChannelAuditException or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Writes the files of a finished recording. Safe on several threads, each with recordings of its own.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Keep(RecordingResult recording, RecordingStamp stamp, ImmutableArray<FigureFile> pictures) =>
        _store.Write(recording.Id, stamp, RecordingContent.Of(_run, recording, _plan.IsAlone ? null : recording, pictures));

    /// <summary>Writes <c>share.json</c>, and takes away recordings that no longer belong to the share.</summary>
    /// <param name="done">Its recordings: id, and from what each was made.</param>
    /// <param name="unread">Those that could not be read.</param>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Finish(ImmutableArray<(string Id, string InputsSha256)> done, ImmutableArray<UnreadRecording> unread)
    {
        using OutputBatch batch = new(_folder);
        batch.Add(ShareManifest.FileName, ShareJson.Render(new ShareManifest(_run.Version, _plan, _run.Inputs, done, unread)));
        batch.Commit(() => _store.KeepOnly(done.Select(one => one.Id)));
    }

    /// <inheritdoc/>
    public void Dispose() => _store.Dispose();

    private static void RequireOurs(RecordingShare share, string folder)
    {
        if (File.Exists(folder))
        {
            throw OutputErrors.NotAFolder(folder);
        }

        if (!Directory.Exists(folder))
        {
            return;
        }

        if (FirstForeign(new DirectoryInfo(folder)) is { } foreign)
        {
            throw ShareErrors.Taken(folder, foreign);
        }

        string manifest = Path.Combine(folder, ShareManifest.FileName);
        if (File.Exists(manifest) && ShareJson.Read(PlainFile.ReadAllBytes(manifest), manifest).Plan.Share is var found && found != share)
        {
            throw ShareErrors.OtherShare(folder, found, share);
        }
    }

    // Of a share that was broken off there may be recordings and no share.json.
    private static string? FirstForeign(DirectoryInfo folder)
    {
        foreach (FileSystemInfo entry in folder.EnumerateFileSystemInfos().OrderBy(entry => entry.Name, StringComparer.Ordinal))
        {
            bool isOurs = entry is DirectoryInfo { LinkTarget: null, Name: UnfinishedRun.RecordingsName }
                || (entry is FileInfo && (entry.Name is ShareManifest.FileName or UnfinishedRun.LockName || entry.Name.EndsWith(OutputBatch.PartialSuffix, StringComparison.Ordinal)));
            if (!isOurs)
            {
                return entry.Name;
            }
        }

        DirectoryInfo recordings = new(Path.Combine(folder.FullName, UnfinishedRun.RecordingsName));
        IEnumerable<string> found = recordings.Exists ? recordings.EnumerateFileSystemInfos().SelectMany(Foreign).Order(StringComparer.Ordinal) : [];
        return found.FirstOrDefault();
    }

    private static IEnumerable<string> Foreign(FileSystemInfo entry) => entry is DirectoryInfo { LinkTarget: null } recording
        ? recording.EnumerateFileSystemInfos()
            .Where(file => file is not FileInfo || !Endings.Any(ending => file.Name.EndsWith(ending, StringComparison.Ordinal)))
            .Select(file => $"{UnfinishedRun.RecordingsName}/{recording.Name}/{file.Name}")
        : [$"{UnfinishedRun.RecordingsName}/{entry.Name}"];
}
