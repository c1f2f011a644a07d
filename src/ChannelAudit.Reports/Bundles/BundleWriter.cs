using System.Collections.Immutable;
using System.IO.Compression;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using ChannelAudit.Reports.Output;

namespace ChannelAudit.Reports.Bundles;

/// <summary>Writes a bundle entry by entry: fixed times, the order of the calls, the index last. Without <see cref="Complete"/> no file appears.</summary>
public sealed class BundleWriter : IDisposable
{
    // The first day that a zip archive can name.
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private readonly string _file;
    private readonly string _partial;
    private readonly FileStream _stream;
    private readonly ZipArchive _zip;
    private readonly ImmutableArray<BundleEntry>.Builder _entries = ImmutableArray.CreateBuilder<BundleEntry>();
    private long _total;
    private bool _isClosed;

    /// <summary>Starts it.</summary>
    /// <param name="file">The file, which must not be there yet.</param>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public BundleWriter(string file)
    {
        (_file, _partial) = (file, file + OutputBatch.PartialSuffix);
        try
        {
            _stream = new FileStream(_partial, FileMode.Create, FileAccess.ReadWrite);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw BundleErrors.CannotWrite(file, fault);
        }

        _zip = new ZipArchive(_stream, ZipArchiveMode.Create, leaveOpen: true);
    }

    /// <summary>What was added so far.</summary>
    public ImmutableArray<BundleEntry> Entries => _entries.ToImmutable();

    /// <summary>Adds a file.</summary>
    /// <returns>What the index will say of it.</returns>
    /// <exception cref="ChannelAuditException">When it is more than a bundle holds, or the operating system refuses.</exception>
    public BundleEntry Add(string path, ReadOnlySpan<byte> bytes)
    {
        _total += bytes.Length;
        if (_entries.Count >= BundleLimits.MostEntries || bytes.Length > BundleLimits.LargestEntry || _total > BundleLimits.LargestTotal)
        {
            throw BundleErrors.TooMuch(_file, path);
        }

        try
        {
            ZipArchiveEntry entry = _zip.CreateEntry(path, CompressionLevel.Optimal);
            entry.LastWriteTime = NoTime;
            entry.ExternalAttributes = 0;
            using Stream stream = entry.Open();
            stream.Write(bytes);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw BundleErrors.CannotWrite(_file, fault);
        }

        BundleEntry added = new(path, Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes.Length);
        _entries.Add(added);
        return added;
    }

    /// <summary>Adds samples as 64-bit floats, little end first.</summary>
    public void Add(string path, ReadOnlySpan<double> samples)
    {
        if (BitConverter.IsLittleEndian)
        {
            Add(path, MemoryMarshal.AsBytes(samples));
            return;
        }

        byte[] bytes = new byte[8 * samples.Length];
        for (int i = 0; i < samples.Length; i++)
        {
            System.Buffers.Binary.BinaryPrimitives.WriteDoubleLittleEndian(bytes.AsSpan(8 * i), samples[i]);
        }

        Add(path, bytes);
    }

    /// <summary>Adds the index and gives the file its name.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Complete(BundleIndex index)
    {
        Add(BundleIndex.FileName, BundleJson.Render(index));
        try
        {
            Close();
            File.Move(_partial, _file, overwrite: false);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw BundleErrors.CannotWrite(_file, fault);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (!_isClosed)
        {
            Quietly.Do(Close);
        }

        Quietly.Do(() => File.Delete(_partial));
    }

    private void Close()
    {
        _isClosed = true;
        _zip.Dispose();
        _stream.Flush(flushToDisk: true);
        _stream.Dispose();
    }
}
