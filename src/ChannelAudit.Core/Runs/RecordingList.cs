using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Events;
using ChannelAudit.Setup;
using ChannelAudit.Text;

namespace ChannelAudit.Runs;

/// <summary>Finds the recordings of a run.</summary>
public static class RecordingList
{
    /// <summary>What common file systems take as the name of one folder.</summary>
    private const int LongestId = 255;

    private static readonly char[] Wildcards = ['*', '?'];

    /// <summary>All recordings that the paths stand for.</summary>
    /// <param name="paths">Files, folders and patterns.</param>
    /// <param name="except">Files that are something else, such as the events table of the run.</param>
    /// <returns>Recordings by id, in ordinal order.</returns>
    /// <exception cref="ChannelAuditException">When a path does not exist, nothing is found, or two recordings have one id.</exception>
    public static ImmutableArray<RecordingEntry> Find(IReadOnlyList<string> paths, IReadOnlyCollection<string> except) => Search(paths, except).Entries;

    /// <summary>All recordings that the paths stand for, and what was passed over.</summary>
    /// <param name="paths">
    /// Files, which are taken whatever they are called; folders, which are searched with everything below them; and patterns with <c>*</c>, <c>**</c> and <c>?</c>, which choose
    /// from what the folder before the first of these would give. Hidden files and folders, linked folders and folders that hold an audit of ours are passed over; so are, in folders, text
    /// files that do not look like samples, and in a BIDS data set everything but the recordings of EMG.
    /// </param>
    /// <param name="except">Files that are something else, such as the events table of the run.</param>
    /// <returns>A file that is reached twice is listed once, as first reached.</returns>
    /// <exception cref="ChannelAuditException">When a path does not exist, nothing is found, or two recordings have one id.</exception>
    public static FoundRecordings Search(IReadOnlyList<string> paths, IReadOnlyCollection<string> except)
    {
        HashSet<string> seen = [.. except.Select(Path.GetFullPath)];
        List<RecordingEntry> entries = [];
        List<string> passedOver = [];
        foreach (RecordingEntry entry in paths.SelectMany(path => FindIn(path, passedOver, except)))
        {
            if (seen.Add(Path.GetFullPath(entry.FilePath)))
            {
                entries.Add(entry);
            }
        }

        if (entries.Count == 0)
        {
            throw RunErrors.NothingFound(paths, passedOver);
        }

        ImmutableArray<RecordingEntry> ordered = [.. entries.OrderBy(entry => entry.Id, StringComparer.Ordinal)];
        RefuseSameIds(ordered);
        return new FoundRecordings(ordered, [.. passedOver.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]);
    }

    /// <summary>The paths that a list names, one a line; blank lines and those with <c>#</c> at their start are none.</summary>
    /// <param name="list">The list; its paths are relative to its own folder.</param>
    /// <exception cref="ChannelAuditException">When it cannot be read, or names nothing.</exception>
    public static ImmutableArray<string> Listed(string list)
    {
        string folder = Path.GetDirectoryName(list) ?? string.Empty;
        try
        {
            ImmutableArray<string> paths =
            [
                .. (PlainFile.IsEmpty(list) ? [] : File.ReadLines(list)).Select(line => line.TrimStart('\uFEFF').Trim()).Where(line => line.Length > 0 && !line.StartsWith('#')).Select(line => Path.Combine(folder, line)),
            ];
            return paths.IsEmpty ? throw RunErrors.EmptyList(list) : paths;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw RunErrors.CannotReadList(list, fault);
        }
    }

    private static IEnumerable<RecordingEntry> FindIn(string path, List<string> passedOver, IReadOnlyCollection<string> except)
    {
        if (File.Exists(path))
        {
            string name = Path.GetFileName(path);
            return [new RecordingEntry(RecordingId.Of(name), path, name)];
        }

        if (Directory.Exists(path))
        {
            FolderSearch search = new(passedOver, except);
            search.In(path, string.Empty, isBids: IsInDataSet(path));
            return search.Found;
        }

        return path.IndexOfAny(Wildcards) >= 0 ? Matching(path, passedOver, except) : throw RunErrors.NoSuchPath(path);
    }

    private static List<RecordingEntry> Matching(string path, List<string> passedOver, IReadOnlyCollection<string> except)
    {
        string plain = path.Replace('\\', '/');
        int slash = plain.LastIndexOf('/', plain.IndexOfAny(Wildcards));
        string root = slash < 0 ? "." : slash == 0 ? "/" : path[..slash];
        PathPattern? pattern = PathPattern.Of(plain[(slash + 1)..], [], out _);
        if (pattern is null || !Directory.Exists(root))
        {
            throw RunErrors.NoSuchPath(path);
        }

        FolderSearch search = new(passedOver, except) { Pattern = pattern };
        search.In(root, string.Empty, isBids: IsInDataSet(root));
        return search.Found.Count == 0 ? throw RunErrors.NothingMatches(path) : search.Found;
    }

    private static bool IsInDataSet(string folder)
    {
        for (DirectoryInfo? place = new(Path.GetFullPath(folder)); place is not null; place = place.Parent)
        {
            if (File.Exists(Path.Combine(place.FullName, BidsCompanions.DescriptionName)))
            {
                return true;
            }
        }

        return false;
    }

    // Ids become folders, and many file systems take names that differ by case for one.
    private static void RefuseSameIds(ImmutableArray<RecordingEntry> entries)
    {
        var byId = new Dictionary<string, RecordingEntry>(StringComparer.OrdinalIgnoreCase);
        foreach (RecordingEntry entry in entries)
        {
            int bytes = Encoding.UTF8.GetByteCount(entry.Id);
            if (bytes > LongestId)
            {
                throw RunErrors.LongId(entry, bytes, LongestId);
            }

            if (!byId.TryAdd(entry.Id, entry))
            {
                throw RunErrors.SameId(byId[entry.Id], entry);
            }
        }
    }
}
