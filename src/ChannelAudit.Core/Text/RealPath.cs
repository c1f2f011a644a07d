namespace ChannelAudit.Text;

/// <summary>Where a path leads when links are followed.</summary>
public static class RealPath
{
    // As many as Linux follows (path_resolution(7)).
    private const int MostLinks = 40;

    private static readonly char[] Separators = [Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar];

    /// <summary>The full path with every link in it followed, as far as its folders exist.</summary>
    /// <remarks>As the operating system does it: <c>..</c> in a link goes up from where the link really lies, not from the folder by which it was reached.</remarks>
    /// <param name="path">The path.</param>
    /// <exception cref="IOException">When links lead in a circle.</exception>
    /// <exception cref="UnauthorizedAccessException">When a folder may not be looked at.</exception>
    public static string Of(string path)
    {
        string full = Path.GetFullPath(path);
        string place = Path.GetPathRoot(full)!;
        Stack<string> left = new();
        Push(left, full[place.Length..]);
        for (int links = 0; left.TryPop(out string? name);)
        {
            string next = Path.Combine(place, name);
            if (name is ".." or ".")
            {
                place = name is "." ? place : Path.GetDirectoryName(place) ?? place;
            }
            else if (new DirectoryInfo(next).LinkTarget is not { } target)
            {
                place = next;
            }
            else if (++links > MostLinks)
            {
                throw new IOException("too many links");
            }
            else
            {
                string root = Path.GetPathRoot(target)!;
                place = root.Length > 0 ? root : place;
                Push(left, target[root.Length..]);
            }
        }

        return place;
    }

    // The first name comes to lie on top.
    private static void Push(Stack<string> left, string path)
    {
        foreach (string name in path.Split(Separators, StringSplitOptions.RemoveEmptyEntries).Reverse())
        {
            left.Push(name);
        }
    }
}
