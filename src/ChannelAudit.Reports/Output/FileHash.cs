using System.Security.Cryptography;

namespace ChannelAudit.Reports.Output;

/// <summary>SHA-256 of files.</summary>
internal static class FileHash
{
    /// <summary>The SHA-256 of a file's bytes in lower-case hexadecimal.</summary>
    public static string Of(string path)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 1, FileOptions.SequentialScan);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }

    /// <summary>Whether a file is there and has that hash.</summary>
    public static bool Is(string path, string sha256) => File.Exists(path) && string.Equals(Of(path), sha256, StringComparison.Ordinal);
}
