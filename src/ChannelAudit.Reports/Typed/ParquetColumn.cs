using Parquet;
using Parquet.Schema;

namespace ChannelAudit.Reports.Typed;

/// <summary>The cells of one column that wait for their group to be full.</summary>
/// <param name="field">The column.</param>
internal abstract class ParquetColumn(DataField field)
{
    /// <summary>What the file's schema says of it.</summary>
    public DataField Field { get; } = field;

    /// <summary>Whether the same few cells come again and again, so that a dictionary of them is shorter.</summary>
    public virtual bool RepeatsItself => false;

    /// <summary>Makes one.</summary>
    /// <param name="column">The column.</param>
    /// <param name="rows">Room for so many cells.</param>
    public static ParquetColumn Of(TypedColumn column, int rows) => column.Kind switch
    {
        CellKind.Text => new TextColumn(column.Name, rows),
        CellKind.Whole => new WholeColumn(column.Name, rows),
        _ => new NumberColumn(column.Name, rows),
    };

    /// <summary>Adds text, or none.</summary>
    public virtual void Add(string? text) => throw Wrong();

    /// <summary>Adds a number, or none.</summary>
    public virtual void Add(double? value) => throw Wrong();

    /// <summary>Adds a whole number, in a text column with a word behind it.</summary>
    public virtual void Add(int value, string suffix) => throw Wrong();

    /// <summary>Writes the cells and forgets them.</summary>
    public abstract void WriteTo(ParquetRowGroupWriter group);

    /// <summary>The fault of a cell that does not belong here.</summary>
    protected InvalidOperationException Wrong() => new($"The column {Field.Name} holds something else.");
}
