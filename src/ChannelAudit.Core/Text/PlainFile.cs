namespace ChannelAudit.Text;

/// <summary>Reads files without ever waiting for one.</summary>
/// <remarks>A pipe or a device that stands where a file is looked for has no length and perhaps no end, and opening it may wait for ever: here it counts as an empty file.</remarks>
public static class PlainFile
{
    /// <summary>Whether something is there that has no bytes by its own statement: an empty file, a pipe or a device, an open pipe that is reached by a link included.</summary>
    /// <param name="path">The path; links are followed.</param>
    /// <exception cref="IOException">When links lead in a circle.</exception>
    /// <exception cref="UnauthorizedAccessException">When it may not be looked at.</exception>
    public static bool IsEmpty(string path)
    {
        FileInfo file = Target(path);

        // The link to an open pipe (what /dev/stdin and a shell's process substitution give) names no path: nothing is where it seems to lead, and yet it can be opened.
        return file.Exists ? file.Length == 0 : File.Exists(path);
    }

    /// <summary>What stands at a path, or where its links lead.</summary>
    /// <param name="path">The path.</param>
    /// <exception cref="IOException">When links lead in a circle.</exception>
    /// <exception cref="UnauthorizedAccessException">When it may not be looked at.</exception>
    public static FileInfo Target(string path)
    {
        FileInfo file = new(path);
        return file.LinkTarget is null ? file : new FileInfo(RealPath.Of(path));
    }

    /// <summary>The bytes of a file.</summary>
    /// <param name="path">The path.</param>
    /// <exception cref="IOException">When it is not there or cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">When it may not be read.</exception>
    public static byte[] ReadAllBytes(string path) => IsEmpty(path) ? [] : File.ReadAllBytes(path);
}
