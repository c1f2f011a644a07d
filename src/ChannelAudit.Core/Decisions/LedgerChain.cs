using System.Buffers;
using System.Security.Cryptography;
using System.Text;

namespace ChannelAudit.Decisions;

/// <summary>How lines are chained: each ends with the SHA-256 of all its bytes before, and begins with that of the line before it.</summary>
/// <remarks>
/// SHA-256 is that of FIPS 180-4 (NIST, 2015). A line is <c>BODY,"sha256":"H"}</c> in ASCII, H over the bytes of BODY. The chain finds a line that was changed, cut
/// out, doubled or moved by accident or in passing; who rewrites the whole chain can be found only by a copy of its last hash kept elsewhere, as in <c>audit.json</c>.
/// </remarks>
public static class LedgerChain
{
    private const int HexLength = 64;

    private static readonly SearchValues<byte> Hex = SearchValues.Create("0123456789abcdef"u8);

    /// <summary>What stands for the line before the first.</summary>
    public static string Start { get; } = new('0', HexLength);

    private static ReadOnlySpan<byte> Before => ",\"sha256\":\""u8;

    private static ReadOnlySpan<byte> After => "\"}"u8;

    /// <summary>The SHA-256 of bytes in lower-case hexadecimal.</summary>
    public static string HashOf(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>A whole line, without its line end.</summary>
    /// <param name="body">An object of JSON without its closing brace.</param>
    internal static byte[] Seal(ReadOnlySpan<byte> body) => [.. body, .. Before, .. Encoding.ASCII.GetBytes(HashOf(body)), .. After];

    /// <summary>The hash that a line states; null when it does not end as lines do.</summary>
    internal static string? StatedHash(ReadOnlySpan<byte> line)
    {
        int length = BodyLength(line);
        if (length < 0)
        {
            return null;
        }

        ReadOnlySpan<byte> hash = line.Slice(length + Before.Length, HexLength);
        return line[length..].StartsWith(Before) && line.EndsWith(After) && !hash.ContainsAnyExcept(Hex) ? Encoding.ASCII.GetString(hash) : null;
    }

    /// <summary>The bytes that a line's hash is over; the line must end as lines do.</summary>
    internal static ReadOnlySpan<byte> BodyOf(ReadOnlySpan<byte> line) => line[..BodyLength(line)];

    private static int BodyLength(ReadOnlySpan<byte> line) => line.Length - Before.Length - HexLength - After.Length;
}
