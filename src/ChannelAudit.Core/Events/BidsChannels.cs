using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Text;

namespace ChannelAudit.Events;

/// <summary>Reads <c>*_channels.tsv</c>.</summary>
internal static class BidsChannels
{
    private static readonly SmallTableKind Kind = new("a channels table", "a channels table has a header line with name, type and units, and tabs between columns");

    /// <summary>Reads the rows in file order; a number that cannot be read counts as not stated.</summary>
    /// <exception cref="ChannelAuditException">When the table cannot be read.</exception>
    public static ImmutableArray<BidsChannel> Read(string path)
    {
        SmallTable table = SmallTable.Read(path, Kind);
        int name = table.IndexOf("name");
        if (name < 0)
        {
            return [];
        }

        return
        [
            .. table.Rows.Where(row => SmallTable.Cell(row, name) is not null).Select(row => new BidsChannel(
                row.Cells[name],
                Text(table, row, "type")?.ToUpperInvariant(),
                Text(table, row, "units"),
                Number(Text(table, row, "low_cutoff")),
                Number(Text(table, row, "high_cutoff")),
                Numbers(Text(table, row, "notch")),
                Number(Text(table, row, "sampling_frequency")),
                Text(table, row, "status"))),
        ];
    }

    private static string? Text(SmallTable table, SmallTableRow row, string column) => SmallTable.Cell(row, table.IndexOf(column));

    private static double? Number(string? text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) && value >= 0 ? value : null;

    // One number or a list such as [50, 100].
    private static ImmutableArray<double> Numbers(string? text) =>
        text is null
            ? []
            : [.. text.Split(['[', ']', ',', ';', ' '], StringSplitOptions.RemoveEmptyEntries).Select(Number).Where(value => value > 0).Select(value => value!.Value)];
}
