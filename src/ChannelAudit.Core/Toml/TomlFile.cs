using System.Security.Cryptography;
using System.Text;
using ChannelAudit.Text;

namespace ChannelAudit.Toml;

/// <summary>Reads a small text file and says what it is the hash of.</summary>
/// <param name="Name">The file's name without its folder.</param>
/// <param name="Content">Its text, without a byte order mark.</param>
/// <param name="Sha256">SHA-256 of its bytes in lower-case hexadecimal.</param>
internal sealed record TomlFile(string Name, string Content, string Sha256)
{
    private const long Largest = 1 << 20;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads the whole file.</summary>
    /// <exception cref="ChannelAuditException">When it is missing, a folder, not to be opened, too large, or not UTF-8.</exception>
    public static TomlFile Read(string path)
    {
        if (Directory.Exists(path))
        {
            throw TomlErrors.IsFolder(path);
        }

        string name = Path.GetFileName(path);
        byte[] bytes = ReadBytes(path, name);
        try
        {
            return new TomlFile(name, Strict.GetString(bytes).TrimStart('\uFEFF'), Hash(bytes));
        }
        catch (DecoderFallbackException)
        {
            throw TomlErrors.NotText(name);
        }
    }

    /// <summary>SHA-256 in lower-case hexadecimal.</summary>
    public static string Hash(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static byte[] ReadBytes(string path, string name)
    {
        try
        {
            if (PlainFile.IsEmpty(path))
            {
                throw TomlErrors.Empty(name);
            }

            using FileStream stream = File.OpenRead(path);
            if (stream.Length > Largest)
            {
                throw TomlErrors.TooLarge(name);
            }

            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            return bytes.ToArray();
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException or ArgumentException)
        {
            throw TomlErrors.NoFile(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw TomlErrors.Unreadable(path, fault);
        }
    }
}
