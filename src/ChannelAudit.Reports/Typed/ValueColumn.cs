using Parquet;
using Parquet.Schema;

namespace ChannelAudit.Reports.Typed;

/// <summary>A column whose cells are values of one type, or none.</summary>
/// <typeparam name="T">The type.</typeparam>
/// <param name="field">The column.</param>
/// <param name="rows">Room for so many cells.</param>
internal abstract class ValueColumn<T>(DataField field, int rows) : ParquetColumn(field)
    where T : struct
{
    private readonly T?[] _cells = new T?[rows];
    private int _count;

    /// <inheritdoc/>
    public override void WriteTo(ParquetRowGroupWriter group)
    {
        group.WriteAsync(Field, new ReadOnlyMemory<T?>(_cells, 0, _count)).GetAwaiter().GetResult();
        _count = 0;
    }

    /// <summary>Adds a cell.</summary>
    protected void Put(T? value) => _cells[_count++] = value;
}
