using System.Buffers;
using System.Text;

namespace ChannelAudit.Reports.Tables;

/// <summary>How text that came from a file is put into a cell, so that it stays one cell and stays text.</summary>
/// <remarks>
/// <para>Tabs, line ends and double quotes: the cell stands in double quotes and quotes inside are doubled (BIDS specification,
/// "Tabular files": values with tabs are escaped using double quotes). Line ends become LF; other control characters become U+FFFD.</para>
/// <para>Text that a spreadsheet would run as a formula (it starts with = + - @, their full-width forms, a tab or a line end) gets an
/// apostrophe in front, and so does text in which such a start already stands behind apostrophes: taking one apostrophe away gives the
/// text of the file back, always.</para>
/// </remarks>
public static class TextCell
{
    private static readonly SearchValues<char> Special = SearchValues.Create(
        [.. Enumerable.Range(0, 0x20).Concat(Enumerable.Range(0x7F, 0x21)).Append('"').Select(code => (char)code)]);

    private static readonly SearchValues<char> FormulaStart = SearchValues.Create("=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20");

    /// <summary>The cell for a text; <c>n/a</c> when there is none.</summary>
    public static string Escape(string? text)
    {
        if (string.IsNullOrEmpty(text))
        {
            return Cells.Missing;
        }

        string safe = StartsLikeFormula(text) ? "'" + text : text;
        return safe.AsSpan().ContainsAny(Special) ? Quoted(safe) : safe;
    }

    private static bool StartsLikeFormula(string text)
    {
        ReadOnlySpan<char> rest = text.AsSpan().TrimStart('\'');
        return !rest.IsEmpty && FormulaStart.Contains(rest[0]);
    }

    private static string Quoted(string text)
    {
        StringBuilder clean = new(text.Length + 2);
        foreach (char character in text.Replace("\r\n", "\n", StringComparison.Ordinal))
        {
            clean.Append(character switch
            {
                '"' => "\"\"",
                '\r' or '\n' => "\n",
                '\t' => "\t",
                _ when char.IsControl(character) => "\uFFFD",
                _ => character.ToString(),
            });
        }

        // Only what would break the cell needs quotes around it.
        return clean.ToString().AsSpan().ContainsAny("\t\n\"") ? $"\"{clean}\"" : clean.ToString();
    }
}
