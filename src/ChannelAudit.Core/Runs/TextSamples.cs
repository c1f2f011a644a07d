using System.Globalization;
using System.Text;
using ChannelAudit.Text;

namespace ChannelAudit.Runs;

/// <summary>Whether a text file in a searched folder looks like samples, or like notes, a list of people, a table of readings.</summary>
/// <remarks>Only the start is read. A file that is named on the command line is taken whatever it looks like; its reader then says what is wrong with it.</remarks>
internal static class TextSamples
{
    private const int StartBytes = 1 << 16;
    private const int MostHeadLines = 40;
    private const int LeastLines = 20;

    private static readonly char[] Separators = ['\t', ';', ',', ' '];

    /// <summary>Whether it does: at least twenty lines of numbers, as many in each, below a head of at most forty lines.</summary>
    public static bool Are(string path)
    {
        string[] lines = WholeLines(path);
        return Separators.Any(separator => LinesOfNumbers(lines, separator) >= LeastLines);
    }

    // The last run of lines with the same number of numbers; the head before it may be anything.
    private static int LinesOfNumbers(string[] lines, char separator)
    {
        int columns = 0;
        int count = 0;
        int head = 0;
        foreach (string line in lines)
        {
            int here = Numbers(line, separator);
            if (here > 0 && here == columns)
            {
                count++;
                continue;
            }

            head += count + 1;
            (columns, count) = (here, here > 0 ? 1 : 0);
            if (head > MostHeadLines + 1)
            {
                return 0;
            }
        }

        return count;
    }

    // Missing values may stand among numbers, not fill a line.
    private static int Numbers(string line, char separator)
    {
        string[] cells = line.Split(separator, separator == ' ' ? StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries : StringSplitOptions.TrimEntries);
        return cells.All(cell => IsNumber(cell, separator) || IsMissing(cell)) && cells.Any(cell => IsNumber(cell, separator)) ? cells.Length : 0;
    }

    private static bool IsNumber(string cell, char separator) =>
        double.TryParse(separator == ',' ? cell : cell.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out _);

    private static bool IsMissing(string cell) => cell.Length == 0 || cell is "n/a" or "NaN" or "nan" or "NA";

    private static string[] WholeLines(string path)
    {
        try
        {
            if (PlainFile.IsEmpty(path))
            {
                return [];
            }

            byte[] start = new byte[StartBytes];
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 1);
            int read = stream.ReadAtLeast(start, StartBytes, throwOnEndOfStream: false);
            string text = Encoding.UTF8.GetString(start, 0, read).TrimStart('\uFEFF').Replace('\0', ' ');
            string[] lines = [.. text.Split('\n').Select(line => line.TrimEnd('\r'))];
            bool isCut = read == StartBytes || lines[^1].Length == 0;
            return isCut ? lines[..^1] : lines;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Taken for a recording, so that its reader says why it cannot be read.
            return [.. Enumerable.Repeat("0", LeastLines)];
        }
    }
}
