using System.Collections.Immutable;

namespace ChannelAudit.Text;

/// <summary>One row of a small table.</summary>
/// <param name="Line">Its line in the file, from 1.</param>
/// <param name="Cells">Its cells, trimmed.</param>
internal sealed record SmallTableRow(int Line, ImmutableArray<string> Cells);
