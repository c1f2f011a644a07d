using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Text;

/// <summary>Where a table starts; positions from 0, -1 for what is not there.</summary>
/// <param name="Names">The labels of the columns, or empty.</param>
/// <param name="NamesAt">Line of the labels.</param>
/// <param name="UnitsAt">Line of the units.</param>
/// <param name="DataAt">Line of the first numbers.</param>
internal sealed record HeaderPlace(ImmutableArray<string> Names, int NamesAt, int UnitsAt, int DataAt)
{
    /// <summary>The first line that belongs to the table.</summary>
    public int TableAt => NamesAt >= 0 ? NamesAt : UnitsAt >= 0 ? UnitsAt : DataAt;
}
