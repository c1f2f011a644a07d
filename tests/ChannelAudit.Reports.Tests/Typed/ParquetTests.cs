using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using ChannelAudit.Measures;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Typed;
using ChannelAudit.Results;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;
using TemporaryFolder = ChannelAudit.Reports.Tests.Output.TemporaryFolder;

namespace ChannelAudit.Reports.Tests.Typed;

/// <summary>The Parquet files against the tables they stand beside, cell by cell, as another reader finds them; skipped where it is not installed.</summary>
public sealed class ParquetTests
{
    private const string Verdicts = "verdicts.parquet";

    [SkippableTheory]
    [InlineData("verdicts")]
    [InlineData("measures")]
    [InlineData("pairs")]
    public void EveryCellIsThatOfTheTables(string table)
    {
        ParquetContent.SkipWithoutReader();
        using TemporaryFolder folder = Written(WithHostile());

        ParquetContent found = ParquetContent.Read(Path.Combine(folder.Path, $"{table}.parquet"));
        (string[] header, string[][] rows) = TablesOf(folder, table);

        Assert.Equal(header, found.Columns.Select(column => column.Name), StringComparer.Ordinal);
        Assert.Equal(rows.Length, found.Rows.Length);
        Assert.True(rows.Length > 10);
        for (int row = 0; row < rows.Length; row++)
        {
            Assert.Equal(rows[row], found.Rows[row].Select(AsInTables), StringComparer.Ordinal);
        }
    }

    [SkippableTheory]
    [InlineData("verdicts", "text text INT32 text DOUBLE DOUBLE text text text text")]
    [InlineData("measures", "text text text text DOUBLE text text DOUBLE DOUBLE text")]
    [InlineData("pairs", "text text text text DOUBLE DOUBLE DOUBLE DOUBLE DOUBLE DOUBLE")]
    public void ColumnsHaveTypesAndMayLackValues(string table, string types)
    {
        ParquetContent.SkipWithoutReader();
        using TemporaryFolder folder = Written(SampleResults.Run());

        ParquetContent found = ParquetContent.Read(Path.Combine(folder.Path, $"{table}.parquet"));

        Assert.Equal(types, string.Join(' ', found.Columns.Select(column => column is { Type: "BYTE_ARRAY", Logical: "STRING" or "UTF8" } ? "text" : column.Type)));
        Assert.All(found.Columns, column => Assert.Equal("OPTIONAL", column.Repetition));
        Assert.Equal("UNCOMPRESSED", Assert.Single(found.Codecs));
    }

    [SkippableFact]
    public void MetadataSaysTableVersionLimitsAndUnits()
    {
        ParquetContent.SkipWithoutReader();
        using TemporaryFolder folder = Written(SampleResults.Run());

        Dictionary<string, string> Of(string table) => ParquetContent.Read(Path.Combine(folder.Path, $"{table}.parquet")).Metadata.ToDictionary(StringComparer.Ordinal);

        Assert.Equal(
            new Dictionary<string, string>(StringComparer.Ordinal)
            {
                ["channelaudit.table"] = "verdicts",
                ["channelaudit.version"] = "0.1.0",
                ["channelaudit.criteria_sha256"] = SampleResults.CriteriaSha256,
                ["channelaudit.unit.onset"] = "s",
                ["channelaudit.unit.duration"] = "s",
            },
            Of("verdicts"));
        Assert.Equal("that of unit", Of("measures")["channelaudit.unit.reject"]);
        Assert.Equal("1", Of("pairs")["channelaudit.unit.gain_ba"]);
    }

    [SkippableFact]
    public void NumbersAreExact()
    {
        ParquetContent.SkipWithoutReader();
        SampleRun run = SampleResults.Run(SampleResults.Large(trials: 40), SampleResults.Faulty());
        using TemporaryFolder folder = Written(run);

        ParquetContent measures = ParquetContent.Read(Path.Combine(folder.Path, "measures.parquet"));
        ParquetContent verdicts = ParquetContent.Read(Path.Combine(folder.Path, Verdicts));

        double?[] values =
        [
            .. run.Recordings.SelectMany(recording => recording.Channels)
                .SelectMany(channel => channel.Cells.SelectMany(cell => cell.Measures.Concat(cell.BaselineMeasures)).Concat(channel.Measures))
                .Select(measure => measure.Value.Value),
        ];
        Assert.Equal(values, measures.Cells("value").Select(cell => cell.ValueKind == JsonValueKind.Null ? null : (double?)cell.GetDouble()));
        Assert.Contains(30.123456789012, verdicts.Cells("onset").Select(cell => cell.GetDouble()));
    }

    [SkippableFact]
    public void TextIsAsItWasWhateverItHolds()
    {
        ParquetContent.SkipWithoutReader();
        string[] labels = [.. SampleResults.HostileLabels, "n/a", "line\r\nend", "half \uD83D", "\u0001\u007F", new string('\u00E9', 70_000)];
        RecordingResult hostile = SampleResults.Hostile();
        RecordingResult recording = hostile with
        {
            Trials = [.. labels.Select((label, index) => hostile.Trials[0] with { Number = index + 1, Label = label })],
            Channels = [hostile.Channels[0] with { Cells = [.. labels.Select((_, index) => hostile.Channels[0].Cells[0] with { Trial = index + 1 })] }],
        };
        using TemporaryFolder folder = Written(SampleResults.Run(recording));

        ParquetContent found = ParquetContent.Read(Path.Combine(folder.Path, Verdicts));

        // Half a surrogate pair is no character, and UTF-8 has none for it.
        Assert.Equal(labels.Select(label => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(label))), found.Cells("condition").Select(cell => cell.GetString()), StringComparer.Ordinal);
    }

    // A reader skips what lies outside a range; the format orders text by its bytes, as "Column orders" in the format's parquet.thrift says (from memory).
    [SkippableFact]
    public void ARangeOfTextIsRightOrNotThere()
    {
        ParquetContent.SkipWithoutReader();
        using TemporaryFolder folder = Written(WithHostile());

        ParquetContent found = ParquetContent.Read(Path.Combine(folder.Path, Verdicts));

        for (int column = 0; column < found.Columns.Length; column++)
        {
            byte[][] cells = [.. found.Rows.Select(row => row[column]).Where(cell => cell.ValueKind == JsonValueKind.String).Select(cell => Encoding.UTF8.GetBytes(cell.GetString()!))];
            JsonElement range = Assert.Single(found.Ranges)[column];
            Assert.Equal(found.Columns[column].Name is "channel" or "condition", range.ValueKind == JsonValueKind.Null);
            if (cells.Length > 0 && range.ValueKind != JsonValueKind.Null)
            {
                Assert.All(cells, cell => Assert.InRange(cell.AsSpan().SequenceCompareTo(Encoding.UTF8.GetBytes(range[0].GetString()!)), 0, int.MaxValue));
                Assert.All(cells, cell => Assert.InRange(cell.AsSpan().SequenceCompareTo(Encoding.UTF8.GetBytes(range[1].GetString()!)), int.MinValue, 0));
            }
        }
    }

    [SkippableFact]
    public void RowsComeInGroupsOfBoundedSize()
    {
        ParquetContent.SkipWithoutReader();
        int perTrial = 4 * MeasureCatalog.OfChannels.Length;
        SampleRun run = SampleResults.Run(SampleResults.Large(trials: (ParquetTable.RowsAGroup * 2 / perTrial) + 1));
        using TemporaryFolder folder = Written(run);

        ParquetContent found = ParquetContent.Read(Path.Combine(folder.Path, "measures.parquet"));
        (_, string[][] rows) = TablesOf(folder, "measures");

        Assert.Equal([ParquetTable.RowsAGroup, ParquetTable.RowsAGroup], found.Groups.Take(2));
        Assert.InRange(found.Groups[^1], 1, ParquetTable.RowsAGroup);
        Assert.Equal(rows.Length, found.Groups.Sum());
        foreach (int row in new[] { 0, ParquetTable.RowsAGroup - 1, ParquetTable.RowsAGroup, (2 * ParquetTable.RowsAGroup) - 1, 2 * ParquetTable.RowsAGroup, rows.Length - 1 })
        {
            Assert.Equal(rows[row], found.Rows[row].Select(AsInTables), StringComparer.Ordinal);
        }
    }

    [SkippableFact]
    public void ATableWithoutRowsHasItsColumns()
    {
        ParquetContent.SkipWithoutReader();
        using TemporaryFolder folder = Written(SampleResults.Run(SampleResults.Large(trials: 1)));

        ParquetContent found = ParquetContent.Read(Path.Combine(folder.Path, "pairs.parquet"));

        Assert.Empty(found.Rows);
        Assert.Equal("recording", found.Columns[0].Name);
        Assert.Equal("pairs", found.Metadata["channelaudit.table"]);
    }

    [Fact]
    public void ColumnsAreThoseOfTheTablesWithTheRecordingInFront()
    {
        Assert.Equal(TableColumns.Verdicts, TypedColumns.Verdicts.Select(column => column.Name), StringComparer.Ordinal);
        Assert.Equal(TableColumns.Measures.Insert(0, "recording"), TypedColumns.Measures.Select(column => column.Name), StringComparer.Ordinal);
        Assert.Equal(TableColumns.Pairs.Insert(0, "recording"), TypedColumns.Pairs.Select(column => column.Name), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("verdicts.tsv")]
    [InlineData("measures.tsv")]
    [InlineData("pairs.tsv")]
    public void TypesAndUnitsAreThoseOfThePage(string table)
    {
        ImmutableArray<TypedColumn> columns = table switch { "verdicts.tsv" => TypedColumns.Verdicts, "measures.tsv" => TypedColumns.Measures, _ => TypedColumns.Pairs };
        Dictionary<string, string[]> page = File.ReadAllText(RepositoryRoot.Fixture("../docs/file-formats.md"))
            .Split($"\n## {table}\n", StringSplitOptions.None)[1]
            .Split("\n## ", StringSplitOptions.None)[0]
            .Split('\n')
            .Where(line => line.StartsWith("| `", StringComparison.Ordinal))
            .Select(line => line.Trim('|').Split('|').Select(cell => cell.Replace("`", string.Empty, StringComparison.Ordinal).Trim()).ToArray())
            .ToDictionary(row => row[0], StringComparer.Ordinal);

        Assert.All(columns.Where(column => page.ContainsKey(column.Name)), column =>
        {
            Assert.Equal(page[column.Name][1] switch { "number" => CellKind.Number, "integer" => CellKind.Whole, _ => CellKind.Text }, column.Kind);
            Assert.Equal(page[column.Name][2], column.Unit ?? string.Empty);
        });
        Assert.True(columns.Count(column => page.ContainsKey(column.Name)) >= columns.Length - 1);
    }

    [Fact]
    public void ACellOfAnotherKindIsAFaultOfOurs()
    {
        using MemoryStream stream = new();
        using ParquetTable table = new([new TypedColumn("onset", CellKind.Number, "s"), new TypedColumn("final")], new ParquetLabel("x", "0", "0"), stream);

        Assert.Throws<InvalidOperationException>(() => table.Word("soon"));
        Assert.Throws<InvalidOperationException>(table.EndRow);
    }

    [Fact]
    public void TheSameRunGivesTheSameBytes()
    {
        using TemporaryFolder one = Written(WithHostile());
        using TemporaryFolder two = Written(WithHostile());

        Assert.All(new[] { "verdicts", "measures", "pairs" }, table => Assert.Equal(
            File.ReadAllBytes(Path.Combine(one.Path, $"{table}.parquet")), File.ReadAllBytes(Path.Combine(two.Path, $"{table}.parquet"))));
    }

    private static SampleRun WithHostile() => SampleResults.Run([.. SampleResults.Run().Recordings, SampleResults.Hostile()]);

    private static TemporaryFolder Written(SampleRun run)
    {
        TemporaryFolder folder = new();
        using AuditFolder place = AuditFolder.Open(folder.Path);
        using RunWriter writer = new(run.Audit, place, run.Recordings.Length == 1, draws: false, withParquet: true);
        foreach (RecordingResult recording in run.Recordings)
        {
            writer.Keep(recording, RecordingStamp.None, []);
            writer.Add(recording, RecordingStamp.None);
        }

        writer.Finish([], CancellationToken.None);
        return folder;
    }

    // A cell as the tables write it: what is the same text there must be the same value here.
    private static string AsInTables(JsonElement cell) => cell.ValueKind switch
    {
        JsonValueKind.Null => Cells.Missing,
        JsonValueKind.Number => Cells.Number(cell.GetDouble()),
        _ => cell.GetString() is { Length: > 0 } text ? TextCell.Escape(text) : "text of no characters in place of none",
    };

    private static (string[] Header, string[][] Rows) TablesOf(TemporaryFolder folder, string table)
    {
        if (string.Equals(table, "verdicts", StringComparison.Ordinal))
        {
            string[][] all = [.. Split(folder.Read("verdicts.tsv"))];
            return (all[0], all[1..]);
        }

        string[] ids = [.. Directory.EnumerateDirectories(Path.Combine(folder.Path, "recordings")).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];
        string[][][] tables = [.. ids.Select(id => Split(folder.Read($"recordings/{id}/{table}.tsv")).ToArray())];
        return (["recording", .. tables[0][0]], [.. tables.SelectMany((rows, i) => rows.Skip(1).Select(row => (string[])[TextCell.Escape(ids[i]), .. row]))]);
    }

    // Tabs and line ends inside double quotes belong to their cell.
    private static IEnumerable<string[]> Split(string text)
    {
        List<string> row = [];
        StringBuilder cell = new();
        bool isQuoted = false;
        foreach (char character in text)
        {
            isQuoted ^= character == '"';
            if (isQuoted || character is not ('\t' or '\n'))
            {
                cell.Append(character);
                continue;
            }

            row.Add(cell.ToString());
            cell.Clear();
            if (character == '\n')
            {
                yield return [.. row];
                row.Clear();
            }
        }
    }
}
