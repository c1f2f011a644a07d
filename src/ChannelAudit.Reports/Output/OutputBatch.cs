using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;

namespace ChannelAudit.Reports.Output;

/// <summary>Files that appear together or not at all: written under temporary names in their own folders, flushed, and renamed at the end.</summary>
/// <remarks>Disposed without a commit, it takes everything away that it made.</remarks>
public sealed class OutputBatch : IDisposable
{
    /// <summary>How temporary names end.</summary>
    internal const string PartialSuffix = ".channelaudit-partial";

    private readonly string _folder;
    private readonly List<(string Partial, string Final)> _pending = [];
    private readonly List<string> _madeFolders = [];
    private readonly ImmutableArray<OutputFile>.Builder _files = ImmutableArray.CreateBuilder<OutputFile>();
    private readonly HashSet<string> _paths = new(StringComparer.Ordinal);

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
        if (!SafePath.IsBelow(path) || !_paths.Add(path))
        {
            throw new ArgumentException($"Not a new path below the output folder: '{path}'.", nameof(path));
        }

        string final = Path.Combine(_folder, path);
        string partial = PartialName(final);
        try
        {
            MakeFolder(Path.GetDirectoryName(final)!);
            _pending.Add((partial, final));
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

            (string partial, string final) = _pending[0];
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

        _madeFolders.Clear();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach ((string partial, _) in _pending)
        {
            Quietly(() => File.Delete(partial));
        }

        // Deepest first; a folder that somebody put a file into stays.
        for (int folder = _madeFolders.Count - 1; folder >= 0; folder--)
        {
            string path = _madeFolders[folder];
            Quietly(() => Directory.Delete(path, recursive: false));
        }

        _pending.Clear();
        _madeFolders.Clear();
    }

    private static string PartialName(string final) => Path.Combine(
        Path.GetDirectoryName(final)!,
        string.Create(CultureInfo.InvariantCulture, $".{Path.GetFileName(final)}.{Environment.ProcessId}{PartialSuffix}"));

    private static void Quietly(Action action)
    {
        try
        {
            action();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // Clearing up after a fault must not hide the fault itself.
        }
    }

    private void MakeFolder(string path)
    {
        if (Directory.Exists(path))
        {
            return;
        }

        if (Path.GetDirectoryName(path) is { } parent)
        {
            MakeFolder(parent);
        }

        Directory.CreateDirectory(path);
        _madeFolders.Add(path);
    }
}
