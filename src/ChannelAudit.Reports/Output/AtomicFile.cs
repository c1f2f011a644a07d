namespace ChannelAudit.Reports.Output;

/// <summary>Writes one file so that it appears whole or not at all.</summary>
public static class AtomicFile
{
    /// <summary>Writes the file under a temporary name in the same folder, flushes, and renames it over what was there.</summary>
    /// <param name="path">The file; its folder is made when it is not there.</param>
    /// <param name="bytes">The whole content.</param>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public static void Write(string path, ReadOnlySpan<byte> bytes)
    {
        string full = Path.GetFullPath(path);
        using OutputBatch batch = new(Path.GetDirectoryName(full)!);
        batch.Add(Path.GetFileName(full), bytes);
        batch.Commit();
    }
}
