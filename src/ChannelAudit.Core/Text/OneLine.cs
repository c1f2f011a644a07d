using System.Globalization;
using System.Text;

namespace ChannelAudit.Text;

/// <summary>Makes text from files fit for a message of one line.</summary>
public static class OneLine
{
    private const int Longest = 80;

    /// <summary>The text without control characters, cut when it is long.</summary>
    /// <param name="text">Any text, however hostile.</param>
    public static string Of(string text)
    {
        var line = new StringBuilder();
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (line.Length >= Longest)
            {
                return line.Append("...").ToString();
            }

            line.Append(IsPlain(rune) ? rune.ToString() : "?");
        }

        return line.ToString();
    }

    /// <summary>The text without control characters, however long; line ends become blanks.</summary>
    /// <param name="text">Any text, however hostile.</param>
    public static string Whole(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return string.Concat(text.Replace('\r', ' ').Replace('\n', ' ').EnumerateRunes().Select(rune => IsPlain(rune) ? rune.ToString() : "?"));
    }

    /// <summary>Names as a list for a message; a long list says how many more there are.</summary>
    /// <param name="names">The names in the order in which they are shown.</param>
    public static string List(IEnumerable<string> names)
    {
        const int most = 14;
        string[] all = [.. names.Select(Of)];
        string shown = string.Join(", ", all.Take(most));
        return all.Length > most ? string.Create(CultureInfo.InvariantCulture, $"{shown} and {all.Length - most} more") : shown;
    }

    /// <summary>A number as it would be written in a setup or criteria file.</summary>
    /// <param name="value">Any number.</param>
    public static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    // Format characters include those that turn the direction of text, which would disguise the rest of the line.
    private static bool IsPlain(Rune rune) => Rune.GetUnicodeCategory(rune) is not (
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);
}
