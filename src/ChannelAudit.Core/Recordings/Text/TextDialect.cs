using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Text;

/// <summary>How a delimited text is written.</summary>
/// <param name="Separator">Tab, semicolon, comma or bar; a blank stands for runs of blanks and tabs.</param>
/// <param name="DecimalSign">Dot or comma.</param>
internal sealed record TextDialect(char Separator, char DecimalSign)
{
    /// <summary>Every dialect we read, the less ambiguous first: equals are decided by this order.</summary>
    public static ImmutableArray<TextDialect> All { get; } =
    [
        new('\t', '.'), new(';', '.'), new(',', '.'), new('|', '.'), new(' ', '.'),
        new('\t', ','), new(';', ','), new('|', ','), new(' ', ','), new(',', ','),
    ];

    /// <summary>Whether columns are set apart by blanks alone.</summary>
    public bool IsBlankSeparated => Separator == ' ';

    /// <summary>Splits one line into cells, quotes taken off (RFC 4180: a quote inside quotes is doubled).</summary>
    public List<string> Split(string line)
    {
        List<string> cells = [];
        if (IsBlankSeparated)
        {
            cells.AddRange(line.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries));
            return cells;
        }

        int at = 0;
        while (at <= line.Length)
        {
            int end = CellEnd(line, at);
            cells.Add(Unquoted(line[at..end]));
            at = end + 1;
        }

        return cells;
    }

    private static string Unquoted(string cell)
    {
        string trimmed = cell.Trim();
        return trimmed is ['"', .., '"'] ? trimmed[1..^1].Replace("\"\"", "\"", StringComparison.Ordinal).Trim() : trimmed;
    }

    private int CellEnd(string line, int start)
    {
        bool quoted = false;
        for (int at = start; at < line.Length; at++)
        {
            if (line[at] == '"')
            {
                quoted = !quoted;
            }
            else if (line[at] == Separator && !quoted)
            {
                return at;
            }
        }

        return line.Length;
    }
}
