using System.Collections.Immutable;

namespace ChannelAudit.Reports.Output;

/// <summary>Takes away what an earlier audit of the same folder wrote and this one does not.</summary>
/// <remarks>Only files that the earlier <c>audit.json</c> lists, that lie below the folder, and that have a name we give: a list changed
/// by hand cannot make us remove anything else. Decisions are never listed and never removed.</remarks>
internal static class StaleFiles
{
    private static readonly ImmutableArray<string> Endings = [".tsv", ".json", ".html", ".md", ".png", ".txt", ".md", ".parquet"];

    /// <summary>Which they are.</summary>
    /// <param name="previous">What the earlier audit lists.</param>
    /// <param name="current">What this one has.</param>
    public static ImmutableArray<string> Of(ImmutableArray<string> previous, IEnumerable<string> current)
    {
        HashSet<string> kept = [.. current];
        return [.. previous.Where(path => !kept.Contains(path) && IsOurs(path))];
    }

    /// <summary>Removes them, and folders of recordings that are empty afterwards.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public static void Remove(string folder, ImmutableArray<string> stale)
    {
        foreach (string path in stale.Where(IsOurs))
        {
            Remove(folder, path);
        }
    }

    private static bool IsOurs(string path)
    {
        string[] parts = path.Split('/');
        bool isPlace = parts.Length == 1 || (parts.Length == 3 && string.Equals(parts[0], "recordings", StringComparison.Ordinal));
        return isPlace
            && SafePath.IsBelow(path)
            && !string.Equals(path, PreviousAudit.FileName, StringComparison.Ordinal)
            && Endings.Any(ending => path.EndsWith(ending, StringComparison.Ordinal));
    }

    private static void Remove(string folder, string path)
    {
        string file = Path.Combine(folder, path);
        string parent = Path.GetDirectoryName(file)!;
        try
        {
            // A folder that is a link leads elsewhere: not ours to clear.
            if (!File.Exists(file) || IsLink(parent, folder))
            {
                return;
            }

            File.Delete(file);
            if (path.Contains('/', StringComparison.Ordinal) && !Directory.EnumerateFileSystemEntries(parent).Any())
            {
                Directory.Delete(parent, recursive: false);
            }
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotWrite(path, exception);
        }
    }

    private static bool IsLink(string parent, string folder)
    {
        for (DirectoryInfo? place = new(parent); place is not null; place = place.Parent)
        {
            if (string.Equals(place.FullName, Path.GetFullPath(folder), StringComparison.Ordinal))
            {
                return false;
            }

            if (place.LinkTarget is not null)
            {
                return true;
            }
        }

        return false;
    }
}
