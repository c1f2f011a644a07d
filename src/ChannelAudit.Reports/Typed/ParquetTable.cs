using System.Collections.Immutable;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;
using Parquet;
using Parquet.Schema;

namespace ChannelAudit.Reports.Typed;

/// <summary>Writes one table as an Apache Parquet file. Rows wait until a group of them is full, so memory holds one group whatever their number.</summary>
/// <remarks>Not compressed: what compressors make differs between versions and processors, and the same rows must give the same bytes.</remarks>
internal sealed class ParquetTable : ITableWriter
{
    /// <summary>Rows of a group; the last has fewer.</summary>
    public const int RowsAGroup = 1 << 16;

    private readonly ImmutableArray<ParquetColumn> _columns;
#pragma warning disable CA2213 // To dispose of it is to write the end of the file: End does, and a file that was broken off must not look whole.
    private readonly ParquetWriter _file;
#pragma warning restore CA2213
    private int _rows;
    private int _cells;

    /// <summary>Starts a file.</summary>
    /// <param name="columns">Its columns.</param>
    /// <param name="label">What it says of itself.</param>
    /// <param name="stream">Takes the bytes; it must know its position, and stays open.</param>
    public ParquetTable(ImmutableArray<TypedColumn> columns, ParquetLabel label, Stream stream)
    {
        _columns = [.. columns.Select(column => ParquetColumn.Of(column, RowsAGroup))];
        ParquetOptions options = new() { CompressionMethod = CompressionMethod.None };
        foreach (ParquetColumn column in _columns.Where(column => column.RepeatsItself))
        {
            options.ColumnEncodingHints[column.Field.Name] = EncodingHint.Dictionary;
        }

        _file = ParquetWriter.CreateAsync(new ParquetSchema(_columns.Select(column => column.Field)), stream, options).GetAwaiter().GetResult();
        _file.CustomMetadata = label.Metadata(columns);
    }

    /// <inheritdoc/>
    public void Word(string word) => Next().Add(word);

    /// <inheritdoc/>
    public void Label(string? text) => Next().Add(string.IsNullOrEmpty(text) ? null : text);

    /// <inheritdoc/>
    public void Number(double? value) => Next().Add(value);

    /// <inheritdoc/>
    public void Count(int value, string suffix = "") => Next().Add(value, suffix);

    /// <inheritdoc/>
    public void Grade(Grade? grade) => Next().Add(grade is { } known ? VerdictWords.Code(known) : null);

    /// <inheritdoc/>
    public void Codes(IEnumerable<string> codes) => Label(string.Join(';', codes.Distinct(StringComparer.Ordinal)));

    /// <inheritdoc/>
    public void EndRow()
    {
        if (_cells != _columns.Length)
        {
            throw new InvalidOperationException($"A row of {_cells.Plain()} cells in a table of {_columns.Length.Plain()} columns.");
        }

        _cells = 0;
        if (++_rows == RowsAGroup)
        {
            WriteGroup();
        }
    }

    /// <inheritdoc/>
    public void End()
    {
        if (_rows > 0)
        {
            WriteGroup();
        }

        _file.DisposeAsync().AsTask().GetAwaiter().GetResult();
    }

    /// <summary>Leaves a file that was not ended without its end: nobody takes it for whole.</summary>
    public void Dispose()
    {
    }

    private ParquetColumn Next() => _columns[_cells++];

    private void WriteGroup()
    {
        using ParquetRowGroupWriter group = _file.CreateRowGroup();
        foreach (ParquetColumn column in _columns)
        {
            column.WriteTo(group);
        }

        group.CompleteValidate();
        _rows = 0;
    }
}
