using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Json;
using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Output;

/// <summary>
/// The hidden folder in which the recordings of a run wait for its end, <c>.unfinished</c>: what stands in the audit's folder stays as it was until all are there, and a
/// run that was broken off goes on from what waits.
/// </summary>
/// <remarks>
/// One folder a recording; its list of files is written last, so that a recording half written counts for nothing. A locked file keeps a second run out.
/// </remarks>
internal sealed class UnfinishedRun : IDisposable
{
    /// <summary>The name of the folder.</summary>
    public const string FolderName = ".unfinished";

    /// <summary>The folder of the recordings, below it, so that no recording can be called like a table or the lock.</summary>
    public const string RecordingsName = "recordings";

    /// <summary>The locked file.</summary>
    public const string LockName = "lock";

    private const string ListName = "list.json";
    private const string AloneSuffix = ".alone";
    private const int LeftTries = 3;

    private readonly string _folder;
    private readonly MadeFolders _made;
    private readonly FileStream _lock;

    private UnfinishedRun(string folder, MadeFolders made)
    {
        (_folder, _made) = (folder, made);
        _lock = new FileStream(Path.Combine(folder, LockName), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 0);
        _lock.SetLength(Environment.ProcessId);

        // The run before takes the file away at its end. Who had opened it just before holds the lock of a file that is gone, beside somebody who makes a new one.
        if (new FileInfo(_lock.Name) is not { Exists: true } found || found.Length != Environment.ProcessId)
        {
            _lock.Dispose();
            throw new IOException("The lock was taken away while it was opened.");
        }
    }

    /// <summary>Opens or makes it.</summary>
    /// <param name="audit">The audit's folder; it may be missing yet.</param>
    /// <exception cref="ChannelAuditException">When another run writes there, or the operating system refuses.</exception>
    public static UnfinishedRun Open(string audit) => TryOpen(audit) ?? throw OutputErrors.AnotherRun(audit);

    /// <summary>Opens or makes it; null while another run writes there.</summary>
    /// <param name="audit">The audit's folder; it may be missing yet.</param>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public static UnfinishedRun? TryOpen(string audit) => TryOpen(audit, FolderName, LeftTries);

    /// <summary>Opens or makes one that lies open in a folder of its own, to be put together with others later; null while another run writes there.</summary>
    /// <param name="folder">The folder; it may be missing yet.</param>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public static UnfinishedRun? TryOpenShare(string folder) => TryOpen(folder, string.Empty, LeftTries);

    private static UnfinishedRun? TryOpen(string audit, string name, int left)
    {
        string folder = Path.GetFullPath(Path.Combine(audit, name));
        MadeFolders made = new();
        try
        {
            if (name.Length > 0 && new DirectoryInfo(folder) is { Exists: true, LinkTarget: not null })
            {
                throw OutputErrors.LinkedFolder(audit, name);
            }

            made.Make(folder);
            return new UnfinishedRun(folder, made);
        }
        catch (IOException) when (File.Exists(Path.Combine(folder, LockName)))
        {
            return null;
        }
        catch (IOException) when (left > 0)
        {
            // The run before went away just now, and took lock and folder with it.
            made.RemoveEmpty();
            return TryOpen(audit, name, left - 1);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            made.RemoveEmpty();
            throw OutputErrors.CannotWrite(audit, exception);
        }
    }

    /// <summary>Where a file of a recording waits.</summary>
    public string Place(string id, string file) => PlaceIn(_folder, id, file);

    /// <summary>Where a file of a recording waits in a share.</summary>
    /// <param name="folder">The folder of the share.</param>
    /// <param name="id">The recording.</param>
    /// <param name="file">The file.</param>
    public static string PlaceIn(string folder, string id, string file) => Path.Combine(folder, RecordingsName, id, file);

    /// <summary>Where a table that is still growing is written.</summary>
    public string Place(string file) => Path.Combine(_folder, file);

    /// <summary>The files of a recording that waits, whole and unchanged; null when there is none, or it was made from other inputs.</summary>
    public ImmutableArray<OutputFile>? Find(string id, RecordingStamp stamp) => FindIn(_folder, id, stamp);

    /// <summary>The files of a recording that waits in a share, whole and unchanged; null when there is none, or it was made from other inputs.</summary>
    /// <param name="folder">The folder of the share.</param>
    /// <param name="id">The recording.</param>
    /// <param name="stamp">From what it must have been made.</param>
    public static ImmutableArray<OutputFile>? FindIn(string folder, string id, RecordingStamp stamp)
    {
        try
        {
            string list = PlaceIn(folder, id, ListName);
            if (!File.Exists(list))
            {
                return null;
            }

            using JsonDocument document = StrictJson.Parse(PlainFile.ReadAllBytes(list));
            JsonField root = new(document.RootElement, ListName, string.Empty);
            RecordingStamp found = new(root.Text("inputs_sha256"), root.Text("figures"));
            ImmutableArray<OutputFile> files = root.List("files", file => new OutputFile(file.Text("path"), file.Text("sha256")));
            return found == stamp && files.All(file => SafePath.IsName(file.Path) && FileHash.Is(PlaceIn(folder, id, file.Path), file.Sha256)) ? files : null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or JsonException or ChannelAuditException)
        {
            return null;
        }
    }

    /// <summary>Writes the files of a recording. Safe on several threads, each with recordings of its own.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public ImmutableArray<OutputFile> Write(string id, RecordingStamp stamp, IReadOnlyList<(string Name, Action<Stream> Write)> files)
    {
        try
        {
            string list = Place(id, ListName);
            Directory.CreateDirectory(Path.GetDirectoryName(list)!);
            File.Delete(list);
            ImmutableArray<OutputFile> written = [.. files.Select(file => Write(id, file.Name, file.Write))];
            Write(id, ListName + OutputBatch.PartialSuffix, ListOf(stamp, written));
            File.Move(list + OutputBatch.PartialSuffix, list, overwrite: true);
            return written;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotWrite($"recordings/{id}", exception);
        }
    }

    /// <summary>Writes one file of a recording that is otherwise as it was; it counts for nothing when the run is broken off.</summary>
    /// <returns>The file, and where it waits.</returns>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public (OutputFile File, string Place) WriteAlone(string id, string name, ReadOnlySpan<byte> bytes)
    {
        try
        {
            string alone = name + AloneSuffix;
            Directory.CreateDirectory(Path.GetDirectoryName(Place(id, alone))!);
            return (Write(id, alone, bytes) with { Path = name }, Place(id, alone));
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotWrite($"recordings/{id}/{name}", exception);
        }
    }

    /// <summary>Throws away recordings that wait and are not among these.</summary>
    /// <param name="ids">Those that stay.</param>
    public void KeepOnly(IEnumerable<string> ids)
    {
        HashSet<string> kept = [.. ids];
        DirectoryInfo recordings = new(Path.Combine(_folder, RecordingsName));
        foreach (DirectoryInfo folder in recordings.Exists ? recordings.EnumerateDirectories().Where(folder => !kept.Contains(folder.Name)) : [])
        {
            Quietly.Do(() => folder.Delete(recursive: true));
        }
    }

    /// <summary>Throws everything away that waits.</summary>
    public void Clear()
    {
        foreach (string folder in Directory.EnumerateDirectories(_folder))
        {
            Quietly.Do(() => Directory.Delete(folder, recursive: true));
        }

        foreach (string file in Directory.EnumerateFiles(_folder).Where(file => !string.Equals(Path.GetFileName(file), LockName, StringComparison.Ordinal)))
        {
            Quietly.Do(() => File.Delete(file));
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        RemoveHusks();

        // Away before it is unlocked; Windows lets it go only afterwards.
        string path = _lock.Name;
        Quietly.Delete(path);
        _lock.Dispose();
        if (OperatingSystem.IsWindows())
        {
            Quietly.Delete(path);
        }

        // Recordings that wait stay for the next run; without any the folder goes.
        if (Directory.Exists(_folder) && !Directory.EnumerateFileSystemEntries(_folder).Any())
        {
            Quietly.Do(() => Directory.Delete(_folder, recursive: false));
        }

        _made.RemoveEmpty();
    }

    // A run that was ended after it moved a recording's files, and before it took the list away, leaves a list of nothing.
    private void RemoveHusks() => Quietly.Do(() =>
    {
        string recordings = Path.Combine(_folder, RecordingsName);
        if (!Directory.Exists(recordings))
        {
            return;
        }

        foreach (string folder in Directory.EnumerateDirectories(recordings)
            .Where(folder => Directory.EnumerateFileSystemEntries(folder).All(entry => string.Equals(Path.GetFileName(entry), ListName, StringComparison.Ordinal))))
        {
            Directory.Delete(folder, recursive: true);
        }

        if (!Directory.EnumerateFileSystemEntries(recordings).Any())
        {
            Directory.Delete(recordings, recursive: false);
        }
    });

    private OutputFile Write(string id, string name, Action<Stream> write)
    {
        using FileStream stream = new(Place(id, name), FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        using SHA256 hash = SHA256.Create();
        using (CryptoStream hashed = new(stream, hash, CryptoStreamMode.Write, leaveOpen: true))
        {
            write(hashed);
        }

        stream.Flush(flushToDisk: true);
        return new OutputFile(name, Convert.ToHexStringLower(hash.Hash!));
    }

    private OutputFile Write(string id, string name, ReadOnlySpan<byte> bytes)
    {
        using FileStream stream = new(Place(id, name), FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        stream.Write(bytes);
        stream.Flush(flushToDisk: true);
        return new OutputFile(name, Convert.ToHexStringLower(SHA256.HashData(bytes)));
    }

    private static byte[] ListOf(RecordingStamp stamp, ImmutableArray<OutputFile> files)
    {
        using JsonText text = new();
        text.Writer.WriteStartObject();
        text.Writer.WriteString("inputs_sha256", stamp.InputsSha256);
        text.Writer.WriteString("figures", stamp.Figures);
        text.Rows("files", files, AuditJson.WriteFile);
        text.Writer.WriteEndObject();
        return text.ToArray();
    }
}
