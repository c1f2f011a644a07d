using System.Collections.Immutable;
using System.IO.Compression;
using System.Runtime.InteropServices;
using ChannelAudit.Reports.Output;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Bundles;

/// <summary>A bundle from anywhere, opened with care: nothing is believed that its directory says, and nothing is read beyond it.</summary>
/// <remarks>
/// Refused are names that lead elsewhere, names that stand twice, entries larger than any of ours, and archives that claim to hold more than their own bytes could. One entry at a time is in memory.
/// </remarks>
public sealed class BundleFile : IDisposable
{
    // Tables of equal rows pack a hundredfold; what packs better is made to burst.
    private const long MostPacked = 250;
    private const long SmallEntry = 1 << 20;

    // Deflate cannot pack tighter: at most 258 bytes for two bits (RFC 1951, 3.2.5).
    private const long MostDeflated = 1032;

    private readonly FileStream _stream;
    private readonly ZipArchive _zip;
    private readonly Dictionary<string, ZipArchiveEntry> _entries;

    private BundleFile(string path, FileStream stream, ZipArchive zip, Dictionary<string, ZipArchiveEntry> entries)
    {
        (FilePath, _stream, _zip, _entries) = (path, stream, zip, entries);
    }

    /// <summary>The file as it was given.</summary>
    public string FilePath { get; }

    /// <summary>The paths of its files in ordinal order.</summary>
    public ImmutableArray<string> Paths => [.. _entries.Keys.Order(StringComparer.Ordinal)];

    /// <summary>Opens a bundle.</summary>
    /// <exception cref="ChannelAuditException">When it is no zip archive, damaged, or made to do harm.</exception>
    public static BundleFile Open(string path)
    {
        FileStream? stream = null;
        ZipArchive? zip = null;
        try
        {
            if (PlainFile.IsEmpty(path))
            {
                throw new InvalidDataException("The file is empty, or no plain file.");
            }

            stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            zip = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true);
            BundleFile bundle = new(path, stream, zip, Checked(path, zip, stream.Length));
            (stream, zip) = (null, null);
            return bundle;
        }
        catch (Exception fault) when (fault is InvalidDataException or IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            throw BundleErrors.NotZip(path, fault);
        }
        finally
        {
            zip?.Dispose();
            stream?.Dispose();
        }
    }

    /// <summary>Whether it holds a file.</summary>
    public bool Has(string path) => _entries.ContainsKey(path);

    /// <summary>The bytes of a file; null when there is none of that path.</summary>
    /// <exception cref="ChannelAuditException">When it is damaged, or not as long as the archive says.</exception>
    public byte[]? Bytes(string path)
    {
        if (!_entries.TryGetValue(path, out ZipArchiveEntry? entry))
        {
            return null;
        }

        try
        {
            byte[] bytes = new byte[entry.Length];
            using Stream stream = entry.Open();
            int read = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            return read == bytes.Length && stream.ReadByte() < 0
                ? bytes
                : throw BundleErrors.Refused(FilePath, path, "not as long as the archive says");
        }
        catch (Exception fault) when (fault is InvalidDataException or IOException or NotSupportedException)
        {
            throw BundleErrors.NotZip($"{FilePath}, {path}", fault);
        }
    }

    /// <summary>A file as 64-bit floats, little end first; null when there is none, or it is no whole number of them.</summary>
    public double[]? Samples(string path)
    {
        if (Bytes(path) is not { } bytes || bytes.Length % sizeof(double) != 0)
        {
            return null;
        }

        double[] samples = MemoryMarshal.Cast<byte, double>(bytes).ToArray();
        if (!BitConverter.IsLittleEndian)
        {
            for (int i = 0; i < samples.Length; i++)
            {
                samples[i] = System.Buffers.Binary.BinaryPrimitives.ReadDoubleLittleEndian(bytes.AsSpan(sizeof(double) * i));
            }
        }

        return samples;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _zip.Dispose();
        _stream.Dispose();
    }

    private static Dictionary<string, ZipArchiveEntry> Checked(string path, ZipArchive zip, long fileLength)
    {
        Dictionary<string, ZipArchiveEntry> entries = new(StringComparer.Ordinal);
        (long total, long packed) = (0, 0);
        foreach (ZipArchiveEntry entry in zip.Entries)
        {
            string? fault = !SafePath.IsBelow(entry.FullName) ? "a name that leads elsewhere"
                : entry.Length is < 0 or > BundleLimits.LargestEntry ? "larger than any file of a bundle"
                : entry.Length > MostDeflated * Math.Max(1, entry.CompressedLength) ? "not as long as the archive says"
                : entry.Length > SmallEntry && !IsSamples(entry.FullName) && entry.Length / Math.Max(1, entry.CompressedLength) > MostPacked ? "packed so tightly that it would burst"
                : entries.TryAdd(entry.FullName, entry) ? null : "a name that stands there twice";
            (total, packed) = (total + Math.Max(0, entry.Length), packed + Math.Max(0, entry.CompressedLength));
            if (fault is null && (entries.Count > BundleLimits.MostEntries || total > BundleLimits.LargestTotal || packed > fileLength))
            {
                fault = "more than a bundle holds, or more than the file could hold";
            }

            if (fault is not null)
            {
                throw BundleErrors.Refused(path, entry.FullName, fault);
            }
        }

        return entries.ContainsKey(BundleIndex.FileName) ? entries : throw BundleErrors.NoIndex(OneLine.Of(path));
    }

    // A dead channel is one number over and over; samples are read one block at a time and never unpacked to disk.
    private static bool IsSamples(string path) => path.EndsWith(BundleExport.SamplesEnding, StringComparison.Ordinal);
}
