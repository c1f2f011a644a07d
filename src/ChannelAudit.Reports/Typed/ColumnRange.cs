using System.Runtime.CompilerServices;
using Parquet;
using Parquet.Meta;

namespace ChannelAudit.Reports.Typed;

/// <summary>The smallest and the largest cell of a column in a group, by which a reader skips groups that cannot hold what it looks for.</summary>
/// <remarks>
/// The format orders text by its bytes, Parquet.Net 6.1.0 by UTF-16 units: from U+D800 on they differ, and a wrong range hides rows. The package has no way to leave a range out, so it is taken
/// away from a field of its writer; a version without that field fails every test of such text.
/// </remarks>
internal static class ColumnRange
{
    /// <summary>Takes away the range of the column that was written last.</summary>
    public static void Remove(ParquetRowGroupWriter writer)
    {
        if (GroupOf(writer).Columns[^1].MetaData?.Statistics is { } statistics)
        {
            (statistics.Min, statistics.Max, statistics.MinValue, statistics.MaxValue) = (null, null, null, null);
        }
    }

    [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_owGroup")]
    private static extern ref RowGroup GroupOf(ParquetRowGroupWriter writer);
}
