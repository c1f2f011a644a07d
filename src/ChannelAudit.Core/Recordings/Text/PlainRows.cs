using System.Runtime.CompilerServices;
using System.Text;

namespace ChannelAudit.Recordings.Text;

/// <summary>Rows of a table as bytes, as long as they are plain: ASCII without quotes, one line a row, as many cells as there are columns.</summary>
/// <remarks>
/// Nearly every row of a recording is. Where one is not, reading stops before it and leaves the rest to the splitter, which knows quotes, encodings and what to say
/// of a ragged row. Numbers of up to 18 digits are read here: where all digits make a whole number below 2^53 and at most 22 stand behind the sign, both parts of
/// the quotient are exact, and so is its rounding (Clinger 1990, How to read floating point numbers accurately, PLDI:92-101).
/// </remarks>
internal sealed class PlainRows
{
    private const int BufferBytes = 1 << 18;
    private const int MostDigits = 18;
    private const long MostExact = 1L << 53;

    private static readonly double[] Powers = [.. Enumerable.Range(0, MostDigits + 1).Select(exponent => Math.Pow(10, exponent))];

    private readonly Stream stream;
    private readonly byte separator;
    private readonly byte decimalSign;
    private readonly byte[] buffer = new byte[BufferBytes];
    private readonly PlainCell[] cells;
    private int start;
    private int end;
    private bool isAtEnd;

    /// <summary>Whether a table can have such rows: in its encoding ASCII is one byte a character, and separator and decimal sign are ASCII and differ.</summary>
    public static bool CanBeIn(Encoding encoding, TextDialect dialect) =>
        (encoding is UTF8Encoding || encoding.Equals(Encoding.Latin1)) && !dialect.IsBlankSeparated && dialect.Separator != dialect.DecimalSign;

    /// <summary>Goes to the start of a line of a stream; false where lines end otherwise than with a line feed.</summary>
    /// <param name="stream">The whole text.</param>
    /// <param name="line">The line, from 1.</param>
    public static bool TryGoTo(Stream stream, int line)
    {
        byte[] head = new byte[BufferBytes];
        stream.Position = 0;
        int length = stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        int at = head.AsSpan(0, length).StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0;
        for (; line > 1; line--)
        {
            int feed = head.AsSpan(at, length - at).IndexOf((byte)'\n');
            int carriage = head.AsSpan(at, length - at).IndexOf((byte)'\r');
            if (feed < 0 || (carriage >= 0 && carriage < feed - 1))
            {
                return false;
            }

            at += feed + 1;
        }

        stream.Position = at;
        return true;
    }

    /// <summary>Starts at a stream's position.</summary>
    /// <param name="stream">The text, on the first byte of a line.</param>
    /// <param name="dialect">How it is written; separator and sign are ASCII.</param>
    /// <param name="columns">Cells in a row.</param>
    public PlainRows(Stream stream, TextDialect dialect, int columns)
    {
        this.stream = stream;
        separator = (byte)dialect.Separator;
        decimalSign = (byte)dialect.DecimalSign;
        cells = new PlainCell[columns];
        Position = stream.Position;
    }

    /// <summary>Where the next row starts, in bytes of the stream.</summary>
    public long Position { get; private set; }

    /// <summary>The cells of the last row.</summary>
    public ReadOnlySpan<PlainCell> Cells => cells;

    /// <summary>The bytes of a cell of the last row.</summary>
    public ReadOnlySpan<byte> BytesOf(in PlainCell cell) => buffer.AsSpan(cell.From, cell.To - cell.From);

    /// <summary>Reads the next line.</summary>
    public PlainLine Next()
    {
        int length = buffer.AsSpan(start, end - start).IndexOf((byte)'\n');
        if (length < 0 && !isAtEnd)
        {
            Refill();
            length = buffer.AsSpan(start, end - start).IndexOf((byte)'\n');
        }

        if (length < 0 && (start == end || !isAtEnd))
        {
            // The end, or a line longer than any row of a recording.
            return isAtEnd ? PlainLine.End : PlainLine.NotPlain;
        }

        int to = length < 0 ? end : start + length;
        int next = length < 0 ? end : to + 1;
        PlainLine line = Split(start, to > start && buffer[to - 1] == '\r' ? to - 1 : to);
        if (line != PlainLine.NotPlain)
        {
            Position += next - start;
            start = next;
        }

        return line;
    }

    private void Refill()
    {
        buffer.AsSpan(start, end - start).CopyTo(buffer);
        (start, end) = (0, end - start);
        int read = stream.ReadAtLeast(buffer.AsSpan(end), buffer.Length - end, throwOnEndOfStream: false);
        isAtEnd = read < buffer.Length - end;
        end += read;
    }

    private PlainLine Split(int from, int to)
    {
        int at = from;
        for (int column = 0; column < cells.Length; column++)
        {
            ref PlainCell cell = ref cells[column];
            if (!TryNumber(at, to, out cell) && !TryOther(at, to, out cell))
            {
                return PlainLine.NotPlain;
            }

            at = cell.To + 1;
            if (cell.To == to && column < cells.Length - 1)
            {
                return column == 0 && cell.IsBlank ? PlainLine.Blank : PlainLine.NotPlain;
            }
        }

        // A separator behind the last column makes an empty cell more, which is nothing.
        return cells[^1].To >= to - 1 ? cells.Length == 1 && cells[0].IsBlank ? PlainLine.Blank : PlainLine.Row : PlainLine.NotPlain;
    }

    /// <summary>Reads digits with a sign before and a decimal sign among them, up to the separator or the end of the line.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool TryNumber(int from, int to, out PlainCell cell)
    {
        ReadOnlySpan<byte> line = buffer.AsSpan(0, to);
        int at = from;
        bool isNegative = at < line.Length && line[at] == '-';
        at += isNegative ? 1 : 0;
        int firstDigit = at;
        int signAt = -1;
        long digits = 0;
        for (; at < line.Length; at++)
        {
            uint digit = (uint)(line[at] - '0');
            if (digit <= 9)
            {
                digits = (10 * digits) + digit;
            }
            else if (line[at] == decimalSign && signAt < 0)
            {
                signAt = at;
            }
            else
            {
                break;
            }

            if (at - firstDigit > MostDigits)
            {
                cell = default;
                return false;
            }
        }

        int decimals = signAt < 0 ? 0 : at - signAt - 1;
        int count = at - firstDigit - (signAt < 0 ? 0 : 1);
        if (count is 0 or > MostDigits || digits > MostExact || (at < line.Length && line[at] != separator))
        {
            cell = default;
            return false;
        }

        double value = digits / Powers[decimals];
        cell = new PlainCell(from, at, isNegative ? -value : value, decimals, true, false);
        return true;
    }

    /// <summary>Finds the end of a cell that is no such number; false where it is not plain.</summary>
    private bool TryOther(int from, int to, out PlainCell cell)
    {
        ReadOnlySpan<byte> rest = buffer.AsSpan(from, to - from);
        int length = rest.IndexOf(separator);
        ReadOnlySpan<byte> own = length < 0 ? rest : rest[..length];
        cell = new PlainCell(from, from + own.Length, double.NaN, 0, false, own.Trim(" \t"u8).IsEmpty);
        foreach (byte sign in own)
        {
            if (sign is (< 0x20 and not (byte)'\t') or (byte)'"' or >= 0x7F)
            {
                return false;
            }
        }

        return true;
    }
}
