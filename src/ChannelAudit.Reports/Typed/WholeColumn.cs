using Parquet.Schema;

namespace ChannelAudit.Reports.Typed;

/// <summary>Whole numbers.</summary>
/// <param name="name">The column's name.</param>
/// <param name="rows">Room for so many cells.</param>
internal sealed class WholeColumn(string name, int rows) : ValueColumn<int>(new DataField(name, typeof(int), isNullable: true), rows)
{
    /// <inheritdoc/>
    public override void Add(int value, string suffix) => Put(suffix.Length == 0 ? value : throw Wrong());
}
