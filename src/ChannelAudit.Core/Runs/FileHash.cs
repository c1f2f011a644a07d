using System.Buffers;
using System.Security.Cryptography;
using ChannelAudit.Text;

namespace ChannelAudit.Runs;

/// <summary>SHA-256 of files.</summary>
public static class FileHash
{
    // Hashing a stream reads 4 kB at a time: for gigabytes, calls to the system would cost a third as much as the sums.
    private const int BufferBytes = 1 << 18;

    /// <summary>The SHA-256 of a file's bytes in lower-case hexadecimal.</summary>
    /// <exception cref="IOException">When it cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">When it may not be read.</exception>
    public static string Of(string path)
    {
        if (PlainFile.IsEmpty(path))
        {
            return Convert.ToHexStringLower(SHA256.HashData([]));
        }

        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 1, FileOptions.SequentialScan);
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        byte[] buffer = ArrayPool<byte>.Shared.Rent(BufferBytes);
        try
        {
            for (int read = stream.Read(buffer); read > 0; read = stream.Read(buffer))
            {
                hash.AppendData(buffer.AsSpan(0, read));
            }

            return Convert.ToHexStringLower(hash.GetHashAndReset());
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    /// <summary>Whether a file is there and has that hash.</summary>
    public static bool Is(string path, string sha256) => File.Exists(path) && string.Equals(Of(path), sha256, StringComparison.Ordinal);
}
