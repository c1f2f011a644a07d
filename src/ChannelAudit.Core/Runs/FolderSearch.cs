using ChannelAudit.Events;
using ChannelAudit.Setup;

namespace ChannelAudit.Runs;

/// <summary>Searches a folder and everything below it for recordings.</summary>
/// <param name="passedOver">Takes the text files that do not look like samples.</param>
/// <param name="except">Files that are something else and need no word.</param>
internal sealed class FolderSearch(List<string> passedOver, IReadOnlyCollection<string> except)
{
    private readonly HashSet<string> others = [.. except.Select(Path.GetFullPath)];

    /// <summary>What was found.</summary>
    public List<RecordingEntry> Found { get; } = [];

    /// <summary>Which paths below the root are meant, of those that look like recordings; null: all.</summary>
    public PathPattern? Pattern { get; init; }

    /// <summary>Searches.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="below">Its path below the root, with <c>/</c> at its end; empty for the root.</param>
    /// <param name="isBids">Whether it lies in a BIDS data set.</param>
    /// <exception cref="ChannelAuditException">When a folder cannot be listed.</exception>
    public void In(string folder, string below, bool isBids)
    {
        if (OutputFolder.IsOfARun(folder))
        {
            return;
        }

        isBids |= File.Exists(Path.Combine(folder, BidsCompanions.DescriptionName));
        foreach (FileSystemInfo item in List(folder))
        {
            string relative = below + item.Name;
            if (item is FileInfo && Takes(item, relative, isBids))
            {
                Found.Add(new RecordingEntry(RecordingId.Of(relative), Path.Combine(folder, item.Name), relative));
            }

            // A linked folder may lead back to one above it.
            if (item is DirectoryInfo && item.LinkTarget is null && !RecordingFiles.IsHidden(item.Name) && !(isBids && RecordingFiles.IsBesideBids(item.Name)))
            {
                In(Path.Combine(folder, item.Name), relative + "/", isBids);
            }
        }
    }

    private bool Takes(FileSystemInfo file, string relative, bool isBids)
    {
        if (Pattern?.Fits(relative) == false)
        {
            return false;
        }

        if (isBids)
        {
            return RecordingFiles.TakesOfBids(file.Name);
        }

        if (!RecordingFiles.Takes(file.Name) || others.Contains(file.FullName))
        {
            return false;
        }

        if (!RecordingFiles.IsText(file.Name) || TextSamples.Are(file.FullName))
        {
            return true;
        }

        passedOver.Add(relative);
        return false;
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
}
