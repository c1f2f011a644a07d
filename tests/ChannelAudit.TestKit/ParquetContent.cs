using System.Collections.Immutable;
using System.Diagnostics;
using System.Text.Json;
using Xunit;

namespace ChannelAudit.TestKit;

/// <summary>What a Parquet file holds, as the npm package hyparquet reads it (<c>fixtures/parquet</c>), which knows nothing of the program.</summary>
/// <param name="Columns">Names, physical types, logical types and repetition, in order.</param>
/// <param name="Metadata">The metadata of the file.</param>
/// <param name="Groups">Rows of each row group.</param>
/// <param name="Codecs">How its pages are compressed.</param>
/// <param name="Ranges">Of each group, the smallest and the largest cell of each column; null where the file does not say.</param>
/// <param name="Rows">The cells: text, number or null.</param>
public sealed record ParquetContent(
    ImmutableArray<(string Name, string Type, string? Logical, string Repetition)> Columns,
    ImmutableDictionary<string, string> Metadata,
    ImmutableArray<int> Groups,
    ImmutableArray<string> Codecs,
    ImmutableArray<ImmutableArray<JsonElement>> Ranges,
    ImmutableArray<ImmutableArray<JsonElement>> Rows)
{
    private const string Node = "/usr/bin/node";

    /// <summary>Skips a test where the reader is not installed.</summary>
    public static void SkipWithoutReader() => Skip.IfNot(
        File.Exists(Node) && Directory.Exists(RepositoryRoot.Fixture("parquet/node_modules/hyparquet")), "node or the package of fixtures/parquet is not installed (npm ci --ignore-scripts)");

    /// <summary>Reads a file; fails the test when the reader cannot.</summary>
    /// <param name="path">The file.</param>
    public static ParquetContent Read(string path)
    {
        ProcessStartInfo start = new(Node, [RepositoryRoot.Fixture("parquet/read.mjs"), path]) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{path}: {errors.GetAwaiter().GetResult()}");
        using JsonDocument json = JsonDocument.Parse(output);
        JsonElement root = json.RootElement.Clone();
        return new ParquetContent(
            [.. root.GetProperty("columns").EnumerateArray().Select(Column)],
            root.GetProperty("metadata").EnumerateObject().ToImmutableDictionary(pair => pair.Name, pair => pair.Value.GetString()!, StringComparer.Ordinal),
            [.. root.GetProperty("groups").EnumerateArray().Select(group => group.GetInt32())],
            [.. root.GetProperty("codecs").EnumerateArray().Select(codec => codec.GetString()!)],
            [.. root.GetProperty("ranges").EnumerateArray().Select(group => group.EnumerateArray().ToImmutableArray())],
            [.. root.GetProperty("rows").EnumerateArray().Select(row => row.EnumerateArray().ToImmutableArray())]);
    }

    /// <summary>The cells of a column.</summary>
    /// <param name="name">Its name.</param>
    public IEnumerable<JsonElement> Cells(string name)
    {
        int place = Columns.Select(column => column.Name).ToList().IndexOf(name);
        return Rows.Select(row => row[place]);
    }

    private static (string Name, string Type, string? Logical, string Repetition) Column(JsonElement column) => (
        column.GetProperty("name").GetString()!,
        column.GetProperty("type").GetString()!,
        column.GetProperty("logical").GetString(),
        column.GetProperty("repetition").GetString()!);
}
