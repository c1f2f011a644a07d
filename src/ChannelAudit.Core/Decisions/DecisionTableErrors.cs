using ChannelAudit.Text;

namespace ChannelAudit.Decisions;

/// <summary>Every message about a table of decisions.</summary>
internal static class DecisionTableErrors
{
    /// <summary>A header without rows.</summary>
    public static ChannelAuditException NoRows(string file) => new(FaultKind.Usage, $"{OneLine.Of(file)}: no decision in it", "write one a row below the header");

    /// <summary>A cell that is needed.</summary>
    public static ChannelAuditException Missing(string file, int line, string column) => Fault(file, line, $"no {column}", column switch
    {
        "by" => "say who decides in a column by, or with --by",
        "verdict" => "write pass, questionable or reject into the column verdict",
        _ => $"write it into the column {column}: who reads it later cannot ask",
    });

    /// <summary>A word that is no verdict.</summary>
    public static ChannelAuditException NoVerdict(string file, int line, string word) => Fault(
        file, line, $"'{OneLine.Of(word)}' is no verdict", NearestName.Of(word, ["pass", "questionable", "reject"]) is { } nearest ? $"did you mean '{nearest}'?" : "write pass, questionable or reject");

    /// <summary>A trial that is no number.</summary>
    public static ChannelAuditException NoNumber(string file, int line, string text) => Fault(
        file, line, $"'{OneLine.Of(text)}' is no number of a trial", "write the number that verdicts.tsv has, or n/a for the channel itself");

    private static ChannelAuditException Fault(string file, int line, string found, string hint) =>
        new(FaultKind.Usage, FormattableString.Invariant($"{OneLine.Of(file)}, line {line}: {found}"), hint);
}
