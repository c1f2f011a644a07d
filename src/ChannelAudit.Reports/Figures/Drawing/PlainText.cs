using System.Globalization;
using System.Text;

namespace ChannelAudit.Reports.Figures.Drawing;

/// <summary>Labels of files as one line of harmless text.</summary>
internal static class PlainText
{
    private const int Replacement = 0xFFFD;

    /// <summary>
    /// The text with what cannot be drawn replaced by U+FFFD, which the font shows as a box: control and format characters, halves of
    /// surrogate pairs, and private characters, for which the font would draw pictures of its own.
    /// </summary>
    public static string Of(string text)
    {
        StringBuilder plain = new(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            plain.Append(IsDrawable(rune) ? rune.ToString() : char.ConvertFromUtf32(Replacement));
        }

        return plain.ToString();
    }

    private static bool IsDrawable(Rune rune) => Rune.GetUnicodeCategory(rune) is not (
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.PrivateUse or UnicodeCategory.Surrogate
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.OtherNotAssigned);
}
