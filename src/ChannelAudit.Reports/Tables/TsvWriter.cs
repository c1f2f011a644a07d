using System.Buffers;
using System.Buffers.Text;
using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tables;

/// <summary>Writes one table straight into UTF-8: header line, tabs, LF, no mark, and no string for a number.</summary>
internal sealed class TsvWriter : ITableWriter
{
    /// <summary>Room for a part that is handed to a sink, and the row that fills it.</summary>
    public const int BytesAPart = 1 << 17;

    private const int FlushedFrom = 1 << 16;

    private readonly int _columns;
    private readonly Action<ReadOnlySpan<byte>>? _sink;
    private byte[] _buffer;
    private int _length;
    private int _cells;

    /// <summary>Starts a table with its header line.</summary>
    /// <param name="columns">Its columns.</param>
    /// <param name="expectedBytes">About how long it gets.</param>
    /// <param name="sink">Takes the rows as they come; null to hold them all.</param>
    public TsvWriter(ImmutableArray<string> columns, int expectedBytes = 4096, Action<ReadOnlySpan<byte>>? sink = null)
    {
        _columns = columns.Length;
        _sink = sink;
        _buffer = ArrayPool<byte>.Shared.Rent(expectedBytes);
        foreach (string column in columns)
        {
            Word(column);
        }

        EndRow();
    }

    /// <inheritdoc/>
    public void Word(string word)
    {
        Separate();
        Append(word);
    }

    /// <inheritdoc/>
    public void Label(string? text)
    {
        Separate();
        Append(TextCell.Escape(text));
    }

    /// <inheritdoc/>
    public void Number(double? value)
    {
        if (value is not { } number)
        {
            Word(Cells.Missing);
            return;
        }

        Separate();
        _length += Cells.Write(number, Room(Cells.LongestNumber));
    }

    /// <inheritdoc/>
    public void Count(int value, string suffix = "")
    {
        Separate();
        Utf8Formatter.TryFormat(value, Room(Cells.LongestNumber), out int written);
        _length += written;
        Append(suffix);
    }

    /// <summary><c>true</c> or <c>false</c>.</summary>
    public void Flag(bool value) => Word(value ? "true" : "false");

    /// <inheritdoc/>
    public void Grade(Grade? grade) => Word(grade is { } known ? VerdictWords.Code(known) : Cells.Missing);

    /// <inheritdoc/>
    public void Codes(IEnumerable<string> codes)
    {
        string joined = string.Join(';', codes.Distinct(StringComparer.Ordinal));
        Word(joined.Length == 0 ? Cells.Missing : joined);
    }

    /// <inheritdoc/>
    public void EndRow()
    {
        if (_cells != _columns)
        {
            throw new InvalidOperationException($"A row of {_cells.Plain()} cells in a table of {_columns.Plain()} columns.");
        }

        Room(1)[0] = (byte)'\n';
        _length++;
        _cells = 0;
        if (_sink is not null && _length >= FlushedFrom)
        {
            Flush();
        }
    }

    /// <summary>Hands the rows so far to the sink.</summary>
    public void Flush()
    {
        _sink!(_buffer.AsSpan(0, _length));
        _length = 0;
    }

    /// <inheritdoc/>
    public void End() => Flush();

    /// <summary>The bytes of the table.</summary>
    public byte[] ToArray() => _buffer.AsSpan(0, _length).ToArray();

    /// <inheritdoc/>
    public void Dispose()
    {
        ArrayPool<byte>.Shared.Return(_buffer);
        _buffer = [];
    }

    private void Separate()
    {
        if (_cells++ > 0)
        {
            Room(1)[0] = (byte)'\t';
            _length++;
        }
    }

    private void Append(string text)
    {
        // Three bytes are the most that one UTF-16 unit takes; half a surrogate pair becomes U+FFFD.
        _length += Encoding.UTF8.GetBytes(text, Room(text.Length * 3));
    }

    private Span<byte> Room(int bytes)
    {
        if (_buffer.Length - _length < bytes)
        {
            byte[] larger = ArrayPool<byte>.Shared.Rent(Math.Max(_buffer.Length * 2, _length + bytes));
            _buffer.AsSpan(0, _length).CopyTo(larger);
            ArrayPool<byte>.Shared.Return(_buffer);
            _buffer = larger;
        }

        return _buffer.AsSpan(_length);
    }
}
