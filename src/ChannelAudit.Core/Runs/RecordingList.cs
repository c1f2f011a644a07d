using System.Collections.Immutable;

namespace ChannelAudit.Runs;

/// <summary>Finds the recordings of a run.</summary>
public static class RecordingList
{
    /// <summary>All recordings that the paths stand for.</summary>
    /// <param name="paths">
    /// Files, which are taken whatever they are called, and folders, which are searched with everything below them. Hidden files and
    /// folders, linked folders and folders that hold an audit of ours are passed over.
    /// </param>
    /// <param name="except">Files that are something else, such as the events table of the run.</param>
    /// <returns>Recordings by id, in ordinal order; a file that is reached twice is listed once, as first reached.</returns>
    /// <exception cref="ChannelAuditException">When a path does not exist, nothing is found, or two recordings have one id.</exception>
    public static ImmutableArray<RecordingEntry> Find(IReadOnlyList<string> paths, IReadOnlyCollection<string> except)
    {
        HashSet<string> seen = [.. except.Select(Path.GetFullPath)];
        var entries = new List<RecordingEntry>();
        foreach (string path in paths)
        {
            foreach (RecordingEntry entry in FindIn(path))
            {
                if (seen.Add(Path.GetFullPath(entry.FilePath)))
                {
                    entries.Add(entry);
                }
            }
        }

        if (entries.Count == 0)
        {
            throw RunErrors.NothingFound(paths);
        }

        ImmutableArray<RecordingEntry> ordered = [.. entries.OrderBy(entry => entry.Id, StringComparer.Ordinal)];
        RefuseSameIds(ordered);
        return ordered;
    }

    private static IEnumerable<RecordingEntry> FindIn(string path)
    {
        if (File.Exists(path))
        {
            string name = Path.GetFileName(path);
            return [new RecordingEntry(RecordingId.Of(name), path, name)];
        }

        if (!Directory.Exists(path))
        {
            throw RunErrors.NoSuchPath(path);
        }

        var found = new List<RecordingEntry>();
        Search(path, string.Empty, found);
        return found;
    }

    private static void Search(string folder, string below, List<RecordingEntry> found)
    {
        if (OutputFolder.IsAudit(folder))
        {
            return;
        }

        foreach (FileSystemInfo item in List(folder))
        {
            string relative = below + item.Name;
            if (item is FileInfo && RecordingFiles.Takes(item.Name))
            {
                found.Add(new RecordingEntry(RecordingId.Of(relative), Path.Combine(folder, item.Name), relative));
            }

            // A linked folder may lead back to one above it.
            if (item is DirectoryInfo && item.LinkTarget is null && !RecordingFiles.IsHidden(item.Name))
            {
                Search(Path.Combine(folder, item.Name), relative + "/", found);
            }
        }
    }

    private static FileSystemInfo[] List(string folder)
    {
        try
        {
            return [.. new DirectoryInfo(folder).EnumerateFileSystemInfos().OrderBy(item => item.Name, StringComparer.Ordinal)];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw RunErrors.CannotList(folder, fault);
        }
    }

    // Ids become folders, and many file systems take names that differ by case for one.
    private static void RefuseSameIds(ImmutableArray<RecordingEntry> entries)
    {
        var byId = new Dictionary<string, RecordingEntry>(StringComparer.OrdinalIgnoreCase);
        foreach (RecordingEntry entry in entries)
        {
            if (!byId.TryAdd(entry.Id, entry))
            {
                throw RunErrors.SameId(byId[entry.Id], entry);
            }
        }
    }
}
