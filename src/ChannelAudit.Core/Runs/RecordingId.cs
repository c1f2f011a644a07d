using System.Globalization;
using System.Text;

namespace ChannelAudit.Runs;

/// <summary>Makes the name of a recording in outputs out of its path.</summary>
public static class RecordingId
{
    /// <summary>The path without its extension, <c>/</c> written <c>+</c>, unsafe characters escaped.</summary>
    /// <param name="relativePath">The path below the given root, with <c>/</c>.</param>
    /// <remarks>
    /// Letters and digits of any script, <c>.</c>, <c>_</c> and <c>-</c> stay; any other character is written as <c>%</c> and two
    /// hexadecimal digits for each byte of its UTF-8 form (as RFC 3986, 2.1). A leading dot is escaped too, so that no id is
    /// hidden or leads out of its folder; so is one at the end, which some file systems drop.
    /// </remarks>
    public static string Of(string relativePath)
    {
        string[] parts = relativePath.Split('/');
        string stem = Path.GetFileNameWithoutExtension(parts[^1]);
        parts[^1] = stem.Length == 0 ? parts[^1] : stem;
        return string.Join('+', parts.Select(Escape));
    }

    /// <summary>A text as a safe part of a file's name, escaped the same way.</summary>
    public static string Escape(string part)
    {
        var text = new StringBuilder();
        Span<byte> bytes = stackalloc byte[4];
        int position = 0;
        foreach (Rune rune in part.EnumerateRunes())
        {
            bool isDotAtAnEnd = rune.Value == '.' && (position == 0 || position == part.Length - 1);
            position += rune.Utf16SequenceLength;
            if (IsSafe(rune) && !isDotAtAnEnd)
            {
                text.Append(rune.ToString());
                continue;
            }

            foreach (byte value in bytes[..rune.EncodeToUtf8(bytes)])
            {
                text.Append(CultureInfo.InvariantCulture, $"%{value:X2}");
            }
        }

        return text.ToString();
    }

    // Marks are parts of letters in many scripts, and of accented letters on file systems that keep them apart.
    private static bool IsSafe(Rune rune) => rune.Value is '.' or '_' or '-' || Rune.IsLetterOrDigit(rune) || Rune.GetUnicodeCategory(rune) is
        UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark;
}
