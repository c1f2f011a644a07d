namespace ChannelAudit.Measures;

/// <summary>A temporary file for what a long recording leaves in tables that are looked at in parts: made when the first part comes, gone with its last user.</summary>
/// <remarks>Pages may be kept and read on several threads.</remarks>
public sealed class Spill
{
    private readonly Lazy<FileStream> file = new(Make);
    private long length;

    /// <summary>Keeps a page.</summary>
    /// <param name="bytes">Its bytes.</param>
    /// <returns>Where it lies.</returns>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public long Keep(ReadOnlySpan<byte> bytes)
    {
        long place = Interlocked.Add(ref length, bytes.Length) - bytes.Length;
        try
        {
            RandomAccess.Write(file.Value.SafeFileHandle, bytes, place);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new ChannelAuditException(
                FaultKind.Usage,
                $"the temporary file for the tables of a long recording cannot be written: {fault.Message.TrimEnd('.')}",
                "make room in the folder for temporary files, or name another with TMPDIR",
                fault);
        }

        return place;
    }

    /// <summary>Reads a page back.</summary>
    /// <param name="place">Where it lies.</param>
    /// <param name="bytes">Takes its bytes.</param>
    public void Read(long place, Span<byte> bytes)
    {
        while (!bytes.IsEmpty)
        {
            int read = RandomAccess.Read(file.Value.SafeFileHandle, bytes, place);
            if (read == 0)
            {
                throw new EndOfStreamException("A page that was kept is not there.");
            }

            bytes = bytes[read..];
            place += read;
        }
    }

    private static FileStream Make()
    {
        string path = Path.GetTempFileName();
        bool isWindows = OperatingSystem.IsWindows();
        FileOptions options = FileOptions.RandomAccess | (isWindows ? FileOptions.DeleteOnClose : FileOptions.None);
        FileStream stream = new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.Delete, bufferSize: 0, options);
        if (!isWindows)
        {
            // Without a name it goes with the process, however that ends.
            File.Delete(path);
        }

        return stream;
    }
}
