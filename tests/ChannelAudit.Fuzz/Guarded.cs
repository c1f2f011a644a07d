using System.IO.Compression;

namespace ChannelAudit.Fuzz;

/// <summary>Runs a reader on bytes from elsewhere: only our own faults may come out of it, and no more memory may go in than the file is worth.</summary>
internal static class Guarded
{
    // Four times the file is what may be allocated for it; beyond it what a reader needs for an empty one, tables and buffers of a fixed size.
    private const int Times = 4;

    // The parser of TOML makes a tree of up to 240 bytes for a byte of a good file, and up to 1050 of a text full of wrong escapes; files over 1 MiB are not given to it.
    private const int TimesOfToml = 1100;
    private const long Fixed = 8L << 20;

    private static readonly byte[] Block = new byte[1 << 16];

    /// <summary>Runs it.</summary>
    /// <param name="target">The name of the reader.</param>
    /// <param name="bytes">The file.</param>
    /// <param name="folder">Where the file is put.</param>
    /// <returns>The fault in our words; null when it was read.</returns>
    /// <exception cref="InvalidOperationException">When more was allocated.</exception>
    public static string? Run(string target, byte[] bytes, string folder)
    {
        (string file, Action<string> read) = Targets.All[target];
        string path = Path.Combine(folder, file);
        File.WriteAllBytes(path, bytes);
        long before = GC.GetAllocatedBytesForCurrentThread();
        string? fault = null;
        try
        {
            read(path);
        }
        catch (ChannelAuditException known)
        {
            fault = known.Message;
        }

        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        long size = target is "bundle" && allocated > Fixed ? Unpacked(path, bytes.LongLength) : bytes.LongLength;
        int times = target is "setup" or "criteria" ? TimesOfToml : Times;
        return allocated <= Fixed + (times * size)
            ? fault
            : throw new InvalidOperationException(FormattableString.Invariant($"{allocated} bytes allocated for a file of {size}"));
    }

    // What a packed file holds, not what it says that it holds.
    private static long Unpacked(string path, long packed)
    {
        try
        {
            using ZipArchive zip = ZipFile.OpenRead(path);
            return packed + zip.Entries.Sum(Unpacked);
        }
        catch (InvalidDataException)
        {
            return packed;
        }
    }

    private static long Unpacked(ZipArchiveEntry entry)
    {
        long length = 0;
        try
        {
            using Stream stream = entry.Open();
            for (int read; (read = stream.Read(Block)) > 0;)
            {
                length += read;
            }
        }
        catch (InvalidDataException)
        {
        }

        return length;
    }
}
