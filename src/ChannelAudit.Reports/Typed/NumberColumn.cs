using Parquet.Schema;

namespace ChannelAudit.Reports.Typed;

/// <summary>Numbers in double precision.</summary>
/// <param name="name">The column's name.</param>
/// <param name="rows">Room for so many cells.</param>
internal sealed class NumberColumn(string name, int rows) : ValueColumn<double>(new DataField(name, typeof(double), isNullable: true), rows)
{
    /// <inheritdoc/>
    public override void Add(double? value) => Put(value);
}
