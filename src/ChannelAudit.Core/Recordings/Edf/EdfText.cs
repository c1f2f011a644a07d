using System.Text;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Reads the fixed-width text fields of a header.</summary>
internal static class EdfText
{
    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The text of a field: cut at the first NUL, control characters as spaces, trimmed.</summary>
    /// <param name="field">The bytes of the field. Bytes above 126 are against the rules but common: they are read as UTF-8 when they
    /// are valid UTF-8, else as Latin-1.</param>
    /// <param name="isPlain">False when the field has bytes above 126.</param>
    public static string Decode(ReadOnlySpan<byte> field, out bool isPlain)
    {
        int end = field.IndexOf((byte)0);
        ReadOnlySpan<byte> used = end < 0 ? field : field[..end];
        isPlain = !used.ContainsAnyExceptInRange((byte)0, (byte)126);
        string text = isPlain ? Encoding.ASCII.GetString(used) : DecodeForeign(used, out _);
        return WithoutControls(text).Trim();
    }

    /// <summary>Text that should be UTF-8; read as Latin-1 where it is not.</summary>
    public static string DecodeForeign(ReadOnlySpan<byte> bytes, out bool isUtf8)
    {
        try
        {
            isUtf8 = true;
            return StrictUtf8.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            isUtf8 = false;
            return Encoding.Latin1.GetString(bytes);
        }
    }

    private static string WithoutControls(string text) =>
        text.Any(char.IsControl) ? string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)) : text;
}
