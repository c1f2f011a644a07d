namespace ChannelAudit.Reports.Bids;

/// <summary>Where a path leads when links are followed.</summary>
internal static class RealPath
{
    private const int MostLinks = 40;

    /// <summary>The full path with every link in it followed, as far as its folders exist.</summary>
    /// <exception cref="ChannelAuditException">When links lead in a circle, or a folder cannot be looked at.</exception>
    public static string Of(string path)
    {
        try
        {
            return Follow(Path.GetFullPath(path), MostLinks);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw BidsErrors.CannotRead(path, fault);
        }
    }

    private static string Follow(string path, int left)
    {
        if (Path.GetDirectoryName(path) is not { } parent)
        {
            return path;
        }

        string place = Path.Combine(Follow(parent, left), Path.GetFileName(path));
        string? target = new DirectoryInfo(place).LinkTarget;
        return target is null ? place
            : left == 0 ? throw new IOException("too many links")
            : Follow(Path.GetFullPath(target, Path.GetDirectoryName(place)!), left - 1);
    }
}
