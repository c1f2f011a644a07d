using System.Collections.Concurrent;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>The few recordings that were looked at last; the one that was not used for longest makes room. Safe for use by several threads.</summary>
/// <param name="audit">The audit.</param>
/// <param name="root">The folder that holds the recordings, or null.</param>
public sealed class RecordingShelf(StoredAudit audit, string? root) : IDisposable
{
    private const int Most = 6;

    private static readonly Task<FileCheck> NothingGiven = Task.FromResult(FileCheck.NoData);

    private readonly Lock _gate = new();
    private readonly LinkedList<(int Place, OpenedRecording Opened)> _opened = [];
    private readonly ConcurrentDictionary<int, Lazy<Task<FileCheck>>> _checks = [];

    /// <summary>How many recordings of an audit lie below a folder; their bytes are not looked at.</summary>
    /// <param name="audit">The audit.</param>
    /// <param name="root">The folder.</param>
    public static int Found(StoredAudit audit, string root)
    {
        ArgumentNullException.ThrowIfNull(audit);
        return audit.Recordings.Count(recording => PathOf(recording, root) is { } path && File.Exists(path));
    }

    /// <summary>Everything known about a recording, without decisions.</summary>
    /// <param name="place">Its place in <c>audit.json</c>.</param>
    /// <exception cref="ChannelAuditException">When its result cannot be read.</exception>
    public RecordingResult ResultOf(int place) => Of(place).Result;

    /// <summary>Reads of a recording's signal.</summary>
    /// <typeparam name="T">What is read.</typeparam>
    /// <param name="place">Its place in <c>audit.json</c>.</param>
    /// <param name="read">Reads.</param>
    /// <exception cref="ChannelAuditException">When it is not there, or cannot be read.</exception>
    public T Use<T>(int place, Func<SignalFile, T> read)
    {
        while (true)
        {
            (bool isRead, T? value) = Of(place).Use(read);
            if (isRead)
            {
                return value!;
            }
        }
    }

    /// <summary>Whether a recording's bytes are those that were audited; they are looked at once, in the background.</summary>
    /// <param name="place">Its place in <c>audit.json</c>.</param>
    public Task<FileCheck> CheckOf(int place) => root is null ? NothingGiven : _checks.GetOrAdd(place, one => new Lazy<Task<FileCheck>>(() => Task.Run(() => Check(one)))).Value;

    /// <summary>Refuses a recording whose signal cannot be seen, or is another one than was audited: nobody shall decide about it.</summary>
    /// <param name="place">Its place in <c>audit.json</c>.</param>
    /// <param name="cancel">Ends the wait for its bytes to be looked at.</param>
    /// <exception cref="ChannelAuditException">When it is so.</exception>
    public async Task RequireAudited(int place, CancellationToken cancel)
    {
        FileCheck check = await CheckOf(place).WaitAsync(cancel);
        if (check is FileCheck.Differs or FileCheck.Missing)
        {
            throw check == FileCheck.Differs ? ReviewErrors.OtherBytes() : ReviewErrors.NotThere();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_gate)
        {
            foreach ((_, OpenedRecording opened) in _opened)
            {
                opened.Dispose();
            }

            _opened.Clear();
        }
    }

    private OpenedRecording Of(int place)
    {
        lock (_gate)
        {
            for (LinkedListNode<(int Place, OpenedRecording Opened)>? node = _opened.First; node is not null; node = node.Next)
            {
                if (node.Value.Place == place)
                {
                    _opened.Remove(node);
                    _opened.AddFirst(node);
                    return node.Value.Opened;
                }
            }

            OpenedRecording opened = new(audit.ResultOf(audit.Recordings[place]) with { Decisions = null }, PathOf(audit.Recordings[place], root));
            _opened.AddFirst((place, opened));
            if (_opened.Count > Most)
            {
                _opened.Last!.Value.Opened.Dispose();
                _opened.RemoveLast();
            }

            return opened;
        }
    }

    private FileCheck Check(int place)
    {
        try
        {
            return PathOf(audit.Recordings[place], root) is { } path && File.Exists(path)
                ? FileHash.Is(path, audit.Recordings[place].Sha256) ? FileCheck.Same : FileCheck.Differs
                : FileCheck.Missing;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return FileCheck.Missing;
        }
    }

    // A path that leads out of the folder is none that screen wrote.
    private static string? PathOf(StoredRecording recording, string? root)
    {
        string[] parts = recording.Path.Split('/');
        bool isBelow = parts.All(part => part.Length > 0 && part is not ("." or "..") && !part.AsSpan().ContainsAny('\\', '\0'));
        return root is not null && isBelow ? Path.Combine([root, .. parts]) : null;
    }
}
