using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Reports.Bids;
using ChannelAudit.Reports.Comparing;
using ChannelAudit.Reports.Fairness;
using ChannelAudit.Reports.Raters;
using ChannelAudit.Reports.Reconciling;
using ChannelAudit.Reports.Silence;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Trends;
using ChannelAudit.TestKit;

namespace ChannelAudit.Reports.Tests.Documents;

/// <summary><c>docs/file-formats.md</c> against the code.</summary>
public sealed class FileFormatsTests
{
    private static readonly string Page = File.ReadAllText(RepositoryRoot.Fixture("../docs/file-formats.md"));

    public static TheoryData<string, ImmutableArray<string>> Tables => new()
    {
        { "verdicts.tsv", TableColumns.Verdicts },
        { "channels.tsv", TableColumns.Channels },
        { "conditions.tsv", TableColumns.Conditions },
        { "fairness.tsv", FairnessTsv.Columns },
        { "fairness-shares.tsv", FairnessTsv.SharesColumns },
        { "sensitivity.tsv", TableColumns.Sensitivity },
        { "detectability.tsv", SilenceTsv.Columns },
        { "measures.tsv", TableColumns.Measures },
        { "pairs.tsv", TableColumns.Pairs },
        { "Table of compare", ChangesTsv.Columns },
        { "Table of reconcile", ReconcileTsv.Columns },
        { "agreement.tsv of raters", RaterTables.AgreementColumns },
        { "detection.tsv of raters", RaterTables.DetectionColumns },
        { "limits.tsv of raters", RaterTables.LimitColumns },
        { "curves.tsv of raters", RaterTables.CurveColumns },
        { "trend.tsv of trend", TrendTsv.Columns },
        { "trend-findings.tsv of trend", TrendFindingsTsv.Columns },
        { "Channels table of export bids", BidsColumns.Channels },
        { "Events table of export bids", BidsColumns.Events },
    };

    [Theory]
    [MemberData(nameof(Tables))]
    public void ThePageListsTheColumnsOfTheCodeInTheirOrder(string table, ImmutableArray<string> columns) =>
        Assert.Equal(columns.AsEnumerable(), Rows(table).Select(row => row[0].Trim('`')), StringComparer.Ordinal);

    [Theory]
    [MemberData(nameof(Tables))]
    public void EveryColumnHasATypeAMeaningAndARuleForMissingValues(string table, ImmutableArray<string> columns)
    {
        string[][] rows = [.. Rows(table)];

        Assert.Equal(columns.Length, rows.Length);
        Assert.All(rows, row => Assert.Contains(row[1], ["text", "number", "integer", "logical", "verdict", "codes"], StringComparer.Ordinal));
        Assert.All(rows, row => Assert.True(row[3].Length > 0 && row[4].Length > 0, row[0]));
    }

    [Fact]
    public void UnitsAndMeaningsOfMeasuresAreThoseOfTheCatalog()
    {
        Dictionary<string, string[]> rows = Rows("channels.tsv").ToDictionary(row => row[0].Trim('`'), StringComparer.Ordinal);

        Assert.All(MeasureCatalog.OfWholeRecordings, measure => Assert.Equal(measure.Unit, rows[measure.Name][2]));
        Assert.All(MeasureCatalog.OfWholeRecordings, measure => Assert.Equal(measure.Meaning, rows[measure.Name][3]));
    }

    private static IEnumerable<string[]> Rows(string table) => Page
        .Split($"\n## {table}\n", StringSplitOptions.None)[1]
        .Split("\n## ", StringSplitOptions.None)[0]
        .Split('\n')
        .Where(line => line.StartsWith("| `", StringComparison.Ordinal))
        .Select(line => line.Trim('|').Split('|').Select(cell => cell.Trim()).ToArray());
}
