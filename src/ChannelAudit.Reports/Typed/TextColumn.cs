using System.Globalization;
using Parquet;
using Parquet.Schema;

namespace ChannelAudit.Reports.Typed;

/// <summary>Text in UTF-8.</summary>
/// <param name="name">The column's name.</param>
/// <param name="rows">Room for so many cells.</param>
internal sealed class TextColumn(string name, int rows) : ValueColumn<ReadOnlyMemory<char>>(new DataField(name, typeof(string), isNullable: true), rows)
{
    private bool _ordersDiffer;

    /// <inheritdoc/>
    public override bool RepeatsItself => true;

    /// <inheritdoc/>
    public override void Add(string? text)
    {
        _ordersDiffer |= text.AsSpan().ContainsAnyInRange('\uD800', '\uFFFF');
        Put(text?.AsMemory());
    }

    /// <inheritdoc/>
    public override void Add(int value, string suffix) => Put((value.ToString(CultureInfo.InvariantCulture) + suffix).AsMemory());

    /// <inheritdoc/>
    public override void WriteTo(ParquetRowGroupWriter group)
    {
        base.WriteTo(group);
        if (_ordersDiffer)
        {
            ColumnRange.Remove(group);
        }

        _ordersDiffer = false;
    }
}
