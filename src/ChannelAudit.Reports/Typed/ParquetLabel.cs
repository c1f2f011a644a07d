using System.Collections.Immutable;

namespace ChannelAudit.Reports.Typed;

/// <summary>What a Parquet file says of itself in its metadata.</summary>
/// <param name="Table">Which table it is.</param>
/// <param name="Version">The version of the program.</param>
/// <param name="CriteriaSha256">SHA-256 of the limits in force.</param>
internal sealed record ParquetLabel(string Table, string Version, string CriteriaSha256)
{
    /// <summary>The metadata, in order: no clock, no machine.</summary>
    /// <param name="columns">The columns of the table.</param>
    public Dictionary<string, string> Metadata(ImmutableArray<TypedColumn> columns)
    {
        Dictionary<string, string> pairs = new(StringComparer.Ordinal)
        {
            ["channelaudit.table"] = Table,
            ["channelaudit.version"] = Version,
            ["channelaudit.criteria_sha256"] = CriteriaSha256,
        };
        foreach (TypedColumn column in columns.Where(column => column.Unit is not null))
        {
            pairs.Add($"channelaudit.unit.{column.Name}", column.Unit!);
        }

        return pairs;
    }
}
