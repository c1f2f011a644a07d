using System.Globalization;
using System.Text;
using nietras.SeparatedValues;

namespace ChannelAudit.Benchmarks;

/// <summary>What reading a table costs before any cell is looked at: its bytes decoded, its rows and cells split, by the library that the reader uses.</summary>
internal static class TableSplitter
{
    /// <summary>Splits a table.</summary>
    /// <param name="path">Text in UTF-8 with commas.</param>
    /// <returns>Characters in all cells, so that none can be left out.</returns>
    public static long CharactersOf(string path)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 1 << 16, FileOptions.SequentialScan);
        using StreamReader text = new(stream, Encoding.UTF8, detectEncodingFromByteOrderMarks: true, bufferSize: 1 << 16);
        using SepReader rows = Sep.New(',').Reader(options => options with { HasHeader = false, CultureInfo = CultureInfo.InvariantCulture }).From(text);
        long characters = 0;
        foreach (SepReader.Row row in rows)
        {
            for (int column = 0; column < row.ColCount; column++)
            {
                characters += row[column].Span.Length;
            }
        }

        return characters;
    }
}
