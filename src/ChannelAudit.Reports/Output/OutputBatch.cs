using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;

namespace ChannelAudit.Reports.Output;

/// <summary>Files that appear together or not at all: written under temporary names in their own folders, flushed, and renamed at the end.</summary>
/// <remarks>Disposed without a commit, it takes everything away that it made.</remarks>
public sealed class OutputBatch : IDisposable
{
    /// <summary>How temporary names end.</summary>
    public const string PartialSuffix = ".channelaudit-partial";

    private readonly string _folder;
    private readonly List<(string Partial, string Final, bool IsOurs)> _pending = [];
    private readonly MadeFolders _made = new();
    private readonly ImmutableArray<OutputFile>.Builder _files = ImmutableArray.CreateBuilder<OutputFile>();
    private readonly HashSet<string> _paths = new(StringComparer.Ordinal);
    private bool _isListed;

    /// <summary>Starts a batch below a folder, which need not exist yet.</summary>
    public OutputBatch(string folder)
    {
        _folder = Path.GetFullPath(folder);
    }

    /// <summary>What was added so far, in order.</summary>
    public ImmutableArray<OutputFile> Files => _files.ToImmutable();

    /// <summary>Writes a file under its temporary name.</summary>
    /// <param name="path">Path below the folder, with <c>/</c>.</param>
    /// <param name="bytes">The whole content.</param>
    /// <exception cref="ArgumentException">When the path leads elsewhere, or was added before.</exception>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Add(string path, ReadOnlySpan<byte> bytes)
    {
        string final = NewPlace(path);
        string partial = PartialName(final);
        try
        {
            _made.Make(Path.GetDirectoryName(final)!);
            _pending.Add((partial, final, true));
            using FileStream stream = new(partial, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
            stream.Write(bytes);
            stream.Flush(flushToDisk: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotWrite(path, exception);
        }

        _files.Add(new OutputFile(path, Convert.ToHexStringLower(SHA256.HashData(bytes))));
    }

    /// <summary>Takes a finished file that lies elsewhere on the same disk; without a commit it stays there.</summary>
    /// <param name="file">Path below the folder, with <c>/</c>, and the SHA-256 of the file.</param>
    /// <param name="source">Where it lies.</param>
    /// <exception cref="ArgumentException">When the path leads elsewhere, or was added before.</exception>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Take(OutputFile file, string source)
    {
        string final = NewPlace(file.Path);
        try
        {
            _made.Make(Path.GetDirectoryName(final)!);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotWrite(file.Path, exception);
        }

        _pending.Add((source, final, false));
        _files.Add(file);
    }

    /// <summary>Names a file that stands in its place already and stays.</summary>
    /// <exception cref="ArgumentException">When the path leads elsewhere, or was added before.</exception>
    public void Leave(OutputFile file)
    {
        NewPlace(file.Path);
        _files.Add(file);
    }

    /// <summary>Renames everything to its final name, in the order added; who dies on the way leaves a <see cref="CommitJournal"/>, by which the next run goes on.</summary>
    /// <param name="stale">Files below the folder that go before the last one, which speaks for all others, gets its name.</param>
    /// <exception cref="ChannelAuditException">When the operating system refuses; what was done by then is completed by the next run.</exception>
    public void CommitListed(ImmutableArray<string> stale)
    {
        CommitJournal.Write(_folder, _pending.Select(file => (Below(file.Partial), Below(file.Final))), stale);
        _isListed = true;
        Commit(() => StaleFiles.Remove(_folder, stale));
        CommitJournal.Remove(_folder);
    }

    /// <summary>Renames everything to its final name, in the order added.</summary>
    /// <param name="beforeLast">Runs before the last file, which speaks for all others, gets its name.</param>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Commit(Action? beforeLast = null)
    {
        while (_pending.Count > 0)
        {
            if (_pending.Count == 1)
            {
                beforeLast?.Invoke();
            }

            (string partial, string final, _) = _pending[0];
            try
            {
                File.Move(partial, final, overwrite: true);
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                throw OutputErrors.CannotWrite(Path.GetFileName(final), exception);
            }

            _pending.RemoveAt(0);
        }

        _made.Keep();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        // What the journal lists is needed by whoever goes on.
        foreach ((string partial, _, _) in _pending.Where(file => file.IsOurs && !_isListed))
        {
            Quietly.Do(() => File.Delete(partial));
        }

        // A folder that somebody put a file into stays.
        _made.RemoveEmpty();
        _pending.Clear();
    }

    private string Below(string path) => Path.GetRelativePath(_folder, path).Replace(Path.DirectorySeparatorChar, '/');

    private static string PartialName(string final) => Path.Combine(
        Path.GetDirectoryName(final)!,
        string.Create(CultureInfo.InvariantCulture, $".{Path.GetFileName(final)}.{Environment.ProcessId}{PartialSuffix}"));

    private string NewPlace(string path) => SafePath.IsBelow(path) && _paths.Add(path)
        ? Path.Combine(_folder, path)
        : throw new ArgumentException($"Not a new path below the output folder: '{path}'.", nameof(path));
}
