using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Decisions;

/// <summary>Reads many decisions from a table: <c>verdict</c> and <c>reason</c>, and where they are needed <c>recording</c>, <c>channel</c>, <c>trial</c>, <c>by</c>.</summary>
public static class DecisionTable
{
    private static readonly SmallTableKind Kind = new("a table of decisions", "give a table with a header: recording, channel, trial, verdict, reason, and if need be by");

    /// <summary>Reads a table.</summary>
    /// <param name="path">Delimited text with a header; <c>n/a</c> stands for nothing, other columns are left alone.</param>
    /// <param name="by">Who decides where the table does not say it; null when it must.</param>
    /// <exception cref="ChannelAuditException">When it cannot be read, has no rows, or a row says what cannot be.</exception>
    public static ImmutableArray<DecisionRequest> Read(string path, string? by)
    {
        SmallTable table = SmallTable.Read(path, Kind);
        ImmutableArray<DecisionRequest> requests = [.. table.Rows.Select(row => Request(table, row, by))];
        return requests.IsEmpty ? throw DecisionTableErrors.NoRows(table.File) : requests;
    }

    private static DecisionRequest Request(SmallTable table, SmallTableRow row, string? by) => new(
        Cell(table, row, "recording"),
        Cell(table, row, "channel"),
        Trial(table, row),
        Verdict(table, row),
        Needed(table, row, "reason"),
        Cell(table, row, "by") ?? by ?? throw DecisionTableErrors.Missing(table.File, row.Line, "by"))
    {
        Place = FormattableString.Invariant($"{table.File}, line {row.Line}"),
    };

    private static Grade Verdict(SmallTable table, SmallTableRow row)
    {
        string word = Needed(table, row, "verdict");
        return GradeCode.From(word) ?? throw DecisionTableErrors.NoVerdict(table.File, row.Line, word);
    }

    private static int? Trial(SmallTable table, SmallTableRow row) => Cell(table, row, "trial") is not { } text ? null
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number
        : throw DecisionTableErrors.NoNumber(table.File, row.Line, text);

    private static string Needed(SmallTable table, SmallTableRow row, string column) => Cell(table, row, column) ?? throw DecisionTableErrors.Missing(table.File, row.Line, column);

    private static string? Cell(SmallTable table, SmallTableRow row, string column) => SmallTable.Cell(row, table.OnlyIndexOf(column));
}
