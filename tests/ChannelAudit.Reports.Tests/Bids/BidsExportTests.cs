using System.Text.Json;
using ChannelAudit.Events;
using ChannelAudit.Reports.Bids;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Tests.Output;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Bids;

/// <summary>The export against the rules of BIDS 1.11 for derivatives, channels and events tables, and read back by our own reader.</summary>
public sealed class BidsExportTests : IDisposable
{
    private const string Stem = "sub-07/ses-1/emg/sub-07_ses-1_task-faces_run-1_desc-quality_";

    private readonly TemporaryFolder _audit = new();
    private readonly TemporaryFolder _place = new();

    public void Dispose()
    {
        _audit.Dispose();
        _place.Dispose();
    }

    [Fact]
    public void EveryRecordingHasTwoTablesWithTheirSidecars()
    {
        Export("out", SampleResults.Run(Named(), SampleResults.Clean("day1+p08")));

        Assert.Equal(
            [
                "out/README.md", "out/dataset_description.json",
                "out/" + Stem + "channels.json", "out/" + Stem + "channels.tsv", "out/" + Stem + "events.json", "out/" + Stem + "events.tsv",
                .. new[] { "channels.json", "channels.tsv", "events.json", "events.tsv" }.Select(end => "out/sub-day1p08/emg/sub-day1p08_task-unnamed_desc-quality_" + end),
            ],
            _place.Files(),
            StringComparer.Ordinal);
    }

    [Fact]
    public void OurOwnReaderFindsTheTablesAndTheirStatus()
    {
        RecordingResult recording = Named();
        Export("out", SampleResults.Run(recording));

        RecordingCompanions found = BidsCompanions.Find(Path.Combine(_place.Path, "out", Stem + "emg.edf"));

        Assert.Empty(found.Warnings);
        Assert.Equal(
            [("EMG cheek", "EMG", 2000.0, "bad"), ("EMG brow", "EMG", 2000.0, null), ("EMG eye", "EMG", 2000.0, "good")],
            found.Channels.Select(channel => (channel.Name, channel.Type!, channel.SamplingHz!.Value, channel.Status)));
        RecordedEvent[] events = [.. EventsTable.Read(found.EventsPath!)];
        Assert.Equal(recording.Trials.Length * recording.Channels.Length, events.Length);
        Assert.Equal(
            recording.Trials.SelectMany(trial => recording.Channels.Select(_ => ((double)trial.OnsetS, trial.Label))),
            events.Select(one => (Math.Round((double)one.OnsetS, 9), one.Label)),
            (one, other) => Math.Abs(one.Item1 - other.Item1) < 1e-6 && string.Equals(one.Label, other.Label, StringComparison.Ordinal));
    }

    [SkippableFact]
    public void RawDataIsNotWrittenIntoThroughALink()
    {
        Skip.If(OperatingSystem.IsWindows(), "links need rights there");
        string raw = Path.Combine(_place.Path, "raw");
        Directory.CreateDirectory(Path.Combine(raw, "sub-01"));
        File.WriteAllText(Path.Combine(raw, "dataset_description.json"), """{"Name": "n", "BIDSVersion": "1.11.1"}""");
        Directory.CreateSymbolicLink(Path.Combine(_place.Path, "link"), Path.Combine(raw, "sub-01"));

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Export("link/quality", SampleResults.Run(Named())));

        Assert.Contains("in the raw data set", fault.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(Path.Combine(raw, "sub-01")));
    }

    [Fact]
    public void StatusIsGoodBadOrMissingAndFollowsTheGrade()
    {
        RecordingResult recording = Named();
        Export("out", SampleResults.Run(recording));
        Dictionary<(string, string), CellResult> cells = recording.Channels
            .SelectMany(channel => channel.Cells.Select(cell => ((channel.Label, cell.Trial.ToString(System.Globalization.CultureInfo.InvariantCulture)), cell)))
            .ToDictionary(entry => entry.Item1, entry => entry.cell);

        string[][] rows = Table("events");

        Assert.Equal(["onset", "duration"], rows[0][..2], StringComparer.Ordinal);
        Assert.Equal(cells.Count, rows.Length - 1);
        Assert.All(rows.Skip(1), row =>
        {
            CellResult cell = cells[(Cell(rows, row, "channel"), Cell(rows, row, "trial"))];
            Assert.Equal(cell.Verdict switch { Grade.Pass => "good", Grade.Reject => "bad", _ => "n/a" }, Cell(rows, row, "status"));
            Assert.Equal(cell.Verdict.ToString().ToLowerInvariant(), Cell(rows, row, "quality_grade"));
            Assert.Equal(cell.Verdict == Grade.Pass, Cell(rows, row, "status_description") is "n/a");
        });
        Assert.Contains("reject: mains (line-noise), joined sites (bridge)", rows.Select(row => Cell(rows, row, "status_description")), StringComparer.Ordinal);
        Assert.Contains("line-noise;drift", rows.Select(row => Cell(rows, row, "not_assessed")), StringComparer.Ordinal);
        Assert.Equal(["name", "type", "units"], Table("channels")[0][..3], StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("channels")]
    [InlineData("events")]
    public void EveryColumnIsDefinedAndEveryClosedOneListsItsValues(string suffix)
    {
        Export("out", SampleResults.Run(Named()));
        string[][] rows = Table(suffix);
        using JsonDocument sidecar = JsonDocument.Parse(_place.Read("out/" + Stem + suffix + ".json"));

        Assert.Equal(rows[0].Length, rows[0].Distinct(StringComparer.Ordinal).Count());
        Assert.Contains("sub-07_ses-1_task-faces_run-1_emg.edf (SHA-256 aaaa", sidecar.RootElement.GetProperty("Description").GetString(), StringComparison.Ordinal);
        foreach (string column in rows[0])
        {
            JsonElement definition = sidecar.RootElement.GetProperty(column);
            Assert.False(string.IsNullOrWhiteSpace(definition.GetProperty("Description").GetString()));
            if (definition.TryGetProperty("Levels", out JsonElement levels))
            {
                HashSet<string> known = [.. levels.EnumerateObject().Select(level => level.Name), "n/a"];
                Assert.All(rows.Skip(1).SelectMany(row => Cell(rows, row, column).Split(';')), value => Assert.Contains(value, known));
            }
        }
    }

    [Fact]
    public void TheDescriptionIsThatOfADerivative()
    {
        Export("out", SampleResults.Run(Named()));
        using JsonDocument description = JsonDocument.Parse(_place.Read("out/dataset_description.json"));
        JsonElement root = description.RootElement;

        Assert.Equal(("derivative", "1.11.1"), (root.GetProperty("DatasetType").GetString(), root.GetProperty("BIDSVersion").GetString()));
        Assert.False(string.IsNullOrEmpty(root.GetProperty("Name").GetString()));
        JsonElement generator = Assert.Single(root.GetProperty("GeneratedBy").EnumerateArray());
        Assert.Equal(("ChannelAudit", "0.1.0"), (generator.GetProperty("Name").GetString(), generator.GetProperty("Version").GetString()));
        Assert.False(root.TryGetProperty("DatasetLinks", out _));
    }

    [Fact]
    public void BelowDerivativesOfTheRawDataSetTheSourceIsLinked()
    {
        _place.Put("raw/dataset_description.json", "{\"Name\": \"x\", \"BIDSVersion\": \"1.11.1\", \"DatasetType\": \"raw\"}");
        _place.Put("raw/sub-07/ses-1/emg/sub-07_ses-1_task-faces_run-1_emg.edf", "signal");

        Export("raw/derivatives/quality", SampleResults.Run(Named()));

        Assert.Contains("\"raw\": \"../..\"", _place.Read("raw/derivatives/quality/dataset_description.json"), StringComparison.Ordinal);
        Assert.Contains(
            "\"bids:raw:sub-07/ses-1/emg/sub-07_ses-1_task-faces_run-1_emg.edf\"", _place.Read("raw/derivatives/quality/" + Stem + "events.json"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{\"Name\": \"x\", \"BIDSVersion\": \"1.11.1\", \"DatasetType\": \"raw\"}", "raw")]
    [InlineData("{\"Name\": \"x\", \"BIDSVersion\": \"1.11.1\"}", "raw")]
    [InlineData("{\"Name\": \"x\", \"BIDSVersion\": \"1.11.1\"}", "raw/sub-07/emg")]
    [InlineData("{\"Name\": \"x\", \"BIDSVersion\": \"1.11.1\"}", "raw/derivatives")]
    [InlineData("not JSON", "raw/quality")]
    public void RawDataSetsAreNeverWrittenInto(string description, string to)
    {
        _place.Put("raw/dataset_description.json", description);

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Export(to, SampleResults.Run(Named())));

        Assert.Contains($"in the raw data set {_place.Path}/raw, which is never written into", fault.Message, StringComparison.Ordinal);
        Assert.Equal(["raw/dataset_description.json"], _place.Files(), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("out/notes.txt", "mine")]
    [InlineData("out/dataset_description.json", "{\"DatasetType\": \"derivative\", \"GeneratedBy\": [{\"Name\": \"another\"}]}")]
    [InlineData("out", "a file")]
    public void AForeignFolderIsRefused(string file, string content)
    {
        _place.Put(file, content);

        Assert.Contains("--to", Assert.Throws<ChannelAuditException>(() => Export("out", SampleResults.Run(Named()))).Hint, StringComparison.Ordinal);
        Assert.Equal([file], _place.Files(), StringComparer.Ordinal);
    }

    [Fact]
    public void AnEarlierExportIsBroughtUpToDateAndWhatOthersPutThereStays()
    {
        Export("out", SampleResults.Run(SampleResults.Clean("day1+p08")));
        _place.Put("out/sub-day1p08/notes.txt", "mine");

        Export("out", SampleResults.Run(Named()));

        Assert.Equal(
            ["out/README.md", "out/dataset_description.json", "out/sub-07", "out/sub-day1p08"],
            _place.Files().Select(file => string.Join('/', file.Split('/')[..2])).Distinct(StringComparer.Ordinal),
            StringComparer.Ordinal);
        Assert.Contains("out/sub-day1p08/notes.txt", _place.Files(), StringComparer.Ordinal);
        Assert.DoesNotContain(_place.Files(), file => file.Contains("sub-day1p08_task", StringComparison.Ordinal));
    }

    [Fact]
    public void TheSameAuditGivesTheSameBytesElsewhere()
    {
        Export("one", SampleResults.Run(Named()));
        CommaCulture.Run(() => Export("two/deeper", SampleResults.Run(Named())));

        string[] files = [.. _place.Files().Where(file => file.StartsWith("one/", StringComparison.Ordinal)).Select(file => file[4..])];
        Assert.Equal(6, files.Length);
        Assert.All(files, file => Assert.Equal(_place.Read("one/" + file), _place.Read("two/deeper/" + file)));
    }

    private static RecordingResult Named() => SampleResults.Faulty() with { Id = "named", Path = "sub-07/ses-1/emg/sub-07_ses-1_task-faces_run-1_emg.edf" };

    private static string Cell(string[][] rows, string[] row, string column) => row[Array.IndexOf(rows[0], column)];

    private int Export(string to, SampleRun run)
    {
        run.Write(_audit.Path, figures: null, CancellationToken.None);
        return BidsExport.Write(StoredAudit.Open(_audit.Path), Path.Combine(_place.Path, to), CancellationToken.None).Length;
    }

    private string[][] Table(string suffix) =>
        [.. _place.Read("out/" + Stem + suffix + ".tsv").Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split('\t'))];
}
