using System.Globalization;
using System.Text;

namespace ChannelAudit.Toml;

/// <summary>Writes values as they stand in a TOML file.</summary>
internal static class TomlText
{
    /// <summary>A basic string that is read back as the same text; what would not be seen, or would turn the direction of a line, is escaped.</summary>
    public static string Quoted(string value)
    {
        StringBuilder text = new("\"");
        foreach (Rune rune in value.EnumerateRunes())
        {
            text.Append(rune.Value switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                _ when !IsHidden(rune) => rune.ToString(),
                <= char.MaxValue => string.Create(CultureInfo.InvariantCulture, $"\\u{rune.Value:X4}"),
                _ => string.Create(CultureInfo.InvariantCulture, $"\\U{rune.Value:X8}"),
            });
        }

        return text.Append('"').ToString();
    }

    /// <summary>A list of strings in one line.</summary>
    public static string List(IEnumerable<string> values) => $"[{string.Join(", ", values.Select(Quoted))}]";

    private static bool IsHidden(Rune rune) => Rune.GetUnicodeCategory(rune) is
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}
