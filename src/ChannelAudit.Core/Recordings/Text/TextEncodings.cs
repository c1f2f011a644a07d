using System.Text;
using System.Text.Unicode;

namespace ChannelAudit.Recordings.Text;

/// <summary>Tells how a text file is encoded from its first bytes.</summary>
internal static class TextEncodings
{
    /// <summary>The encoding, a byte order mark first; UTF-8 when the bytes are valid UTF-8, else Latin-1.</summary>
    /// <param name="head">The first bytes of the file.</param>
    /// <returns>Null when the bytes are no text.</returns>
    public static Encoding? Detect(ReadOnlySpan<byte> head)
    {
        if (head.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
        {
            return Encoding.UTF8;
        }

        if (head.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
        {
            return Encoding.Unicode;
        }

        if (head.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            return Encoding.BigEndianUnicode;
        }

        if (head.Contains((byte)0))
        {
            return Utf16WithoutMark(head);
        }

        return HasControls(head) ? null : Utf8.IsValid(WithoutCutCharacter(head)) ? Encoding.UTF8 : Encoding.Latin1;
    }

    private static Encoding? Utf16WithoutMark(ReadOnlySpan<byte> head)
    {
        int even = 0;
        int odd = 0;
        for (int i = 0; i + 1 < head.Length; i += 2)
        {
            even += head[i] == 0 ? 1 : 0;
            odd += head[i + 1] == 0 ? 1 : 0;
        }

        // Numbers are ASCII: nearly every second byte is 0 and none of the others.
        int pairs = head.Length / 2;
        return (even, odd) switch
        {
            (0, _) when odd > 0.9 * pairs => Encoding.Unicode,
            (_, 0) when even > 0.9 * pairs => Encoding.BigEndianUnicode,
            _ => null,
        };
    }

    private static bool HasControls(ReadOnlySpan<byte> head)
    {
        int controls = 0;
        foreach (byte value in head)
        {
            controls += value < 32 && value is not ((byte)'\t' or (byte)'\n' or (byte)'\r' or 12 or 26) ? 1 : 0;
        }

        return controls > head.Length / 100;
    }

    private static ReadOnlySpan<byte> WithoutCutCharacter(ReadOnlySpan<byte> head)
    {
        int back = 0;
        while (back < 3 && back < head.Length && (head[^(back + 1)] & 0xC0) == 0x80)
        {
            back++;
        }

        return back < head.Length && (head[^(back + 1)] & 0x80) != 0 ? head[..^(back + 1)] : head;
    }
}
