using System.Diagnostics.CodeAnalysis;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Tests.Events;

/// <summary>Rules: BIDS specification 1.11, "The inheritance principle" and "Electromyography".</summary>
[SuppressMessage("Reliability", "CA2000", Justification = "A recording in memory holds nothing to give back.")]
public sealed class BidsCompanionsTests
{
    [Fact]
    public void CompanionsBesideTheRecordingAreFound()
    {
        using TemporaryFolder folder = new();
        folder.Write("sub-01_task-talk_events.tsv", "onset\tduration\n1\t2\n");
        folder.Write("sub-01_task-talk_recording-left_channels.tsv", "name\ttype\tunits\nE1\tEMG\tuV\n");
        folder.Write("sub-01_task-talk_recording-right_channels.tsv", "name\ttype\tunits\nE2\tEMG\tuV\n");
        folder.Write("sub-01_task-other_events.tsv", "onset\tduration\n1\t2\n");
        folder.Write("sub-01_task-talk_emg.json", "{\"PowerLineFrequency\": 50, \"SamplingFrequency\": 2000}");

        RecordingCompanions found = BidsCompanions.Find(Path.Combine(folder.Folder, "sub-01_task-talk_recording-left_emg.edf"));

        Assert.Equal("sub-01_task-talk_events.tsv", Path.GetFileName(found.EventsPath));
        Assert.Equal("sub-01_task-talk_recording-left_channels.tsv", Path.GetFileName(found.ChannelsPath));
        Assert.Equal("E1", Assert.Single(found.Channels).Name);
        Assert.Equal(50, found.PowerLineHz);
        Assert.Equal(2000, found.SamplingHz);
        Assert.Empty(found.Warnings);
    }

    [Fact]
    public void SidecarsOfTheDataSetAreInheritedAndTheNearerOneWins()
    {
        using TemporaryFolder folder = new();
        folder.Write("dataset_description.json", "{}");
        folder.Write("task-talk_emg.json", "{\"PowerLineFrequency\": 60, \"SamplingFrequency\": 1000, \"SoftwareFilters\": {\"Butterworth high-pass\": {\"cutoff\": 20}, \"smoothing\": {}}}");
        string recording = folder.Write("sub-01/emg/sub-01_task-talk_emg.edf", "x");
        folder.Write("sub-01/emg/sub-01_task-talk_emg.json", "{\"SamplingFrequency\": 2000, \"PowerLineFrequency\": \"n/a\"}");

        RecordingCompanions found = BidsCompanions.Find(recording);

        Assert.Equal(60, found.PowerLineHz);
        Assert.Equal(2000, found.SamplingHz);
        Assert.Equal("Butterworth high-pass, smoothing", found.SoftwareFilters);
        folder.Write("sub-01/emg/sub-01_task-talk_emg.json", "{\"SoftwareFilters\": \"n/a\"}");
        Assert.Null(BidsCompanions.Find(recording).SoftwareFilters);
    }

    [Fact]
    public void AnOrdinaryNameHasCompanionsOfThatName()
    {
        using TemporaryFolder folder = new();
        folder.Write("p1_events.tsv", "onset\tduration\n1\t2\n");
        folder.Write("p10_events.tsv", "onset\tduration\n1\t2\n");

        Assert.Equal("p1_events.tsv", Path.GetFileName(BidsCompanions.Find(Path.Combine(folder.Folder, "p1.csv")).EventsPath));
        Assert.Null(BidsCompanions.Find(Path.Combine(folder.Folder, "p2.csv")).EventsPath);
        Assert.Null(BidsCompanions.Find(Path.Combine(folder.Folder, "nowhere", "p2.csv")).EventsPath);
    }

    [Fact]
    public void UnreadableCompanionsArePassedOverWithAWarning()
    {
        using TemporaryFolder folder = new();
        folder.Write("r_channels.tsv", "name\ttype\nE1\n");
        folder.Write("r_emg.json", "{\n\"PowerLineFrequency\": }");

        RecordingCompanions found = BidsCompanions.Find(Path.Combine(folder.Folder, "r.edf"));

        Assert.Null(found.PowerLineHz);
        Assert.Equal(
            [new("r_channels.tsv", "table", "not used: r_channels.tsv, line 2: expected 2 columns, found 1"), new("r_emg.json", "line 2", "not used: not valid JSON, or it cannot be read")],
            found.Warnings.ToArray());
    }

    [Fact]
    public void TypesFiltersAndConflictsAreJoined()
    {
        using TemporaryFolder folder = new();
        folder.Write(
            "r_channels.tsv",
            "name\ttype\tunits\tlow_cutoff\thigh_cutoff\tnotch\tsampling_frequency\nA\tEMG\tV\t20\t450\t[50, 100]\t2000\nB\tEMG\tµV\tn/a\tn/a\tn/a\t1000\nT\tTRIG\tn/a\tn/a\tn/a\tn/a\tn/a\n");
        using Recording made = ArrayRecording.Of(1000, ("A", new double[10]), ("B", new double[10]), ("T", new double[10]), ("X", new double[10]));

        Recording joined = BidsCompanions.Find(Path.Combine(folder.Folder, "r.edf")).ApplyTo(made);

        Prefilter filter = joined.Channels[0].Prefilter;
        Assert.Equal((20.0, 450.0), (filter.HighpassHz, filter.LowpassHz));
        Assert.Equal([50.0, 100.0], filter.NotchesHz.ToArray());
        Assert.Equal("type TRIG in the channels table", joined.Channels[2].NotAudited);
        Assert.Null(joined.Channels[1].NotAudited);
        Assert.Equal(
            ["r_channels.tsv, column name: no row for X", "r_channels.tsv, column units: A: the recording says uV, the table V; the recording's own unit is used",
                "r_channels.tsv, sampling frequency: A: the recording says 1000 Hz, this file 2000 Hz; the recording's own rate is used"],
            joined.Warnings.Select(warning => $"{warning.File}, {warning.Place}: {warning.Message}").ToArray());
    }

    [Fact]
    public void AFilterThatTheFileStatesStands()
    {
        using Recording made = ArrayRecording.Of(1000, ("A", new double[10]));
        Recording filtered = new()
        {
            FileName = "r.edf",
            Format = "EDF",
            DurationS = 0.01,
            Samples = made.Samples,
            Channels = [made.Channels[0] with { Prefilter = new Prefilter(10, null, [], "HP:10Hz") }],
        };
        RecordingCompanions companions = new() { ChannelsPath = "c.tsv", Channels = [new("A", "EMG", "uV", 20, 450, [50], null, null)] };

        Prefilter joined = companions.ApplyTo(filtered).Channels[0].Prefilter;

        Assert.Equal((10.0, 450.0, "HP:10Hz"), (joined.HighpassHz, joined.LowpassHz, joined.Text));
    }

    [SkippableFact]
    public void TheStandardsExamplesAreFoundAndRead()
    {
        string? root = Environment.GetEnvironmentVariable("CHANNELAUDIT_REAL_DATA");
        Skip.If(root is null, "CHANNELAUDIT_REAL_DATA is not set: the BIDS examples are not on this machine");
        string[] recordings = Directory.GetFiles(Path.Combine(root!, "bids"), "*_emg.edf", SearchOption.AllDirectories);

        Assert.Equal(8, recordings.Length);
        foreach (string path in recordings)
        {
            RecordingCompanions found = BidsCompanions.Find(path);
            Assert.NotNull(found.ChannelsPath);
            Assert.NotEmpty(found.Channels);
            Assert.All(found.Channels, channel => Assert.Equal("EMG", channel.Type));
            Assert.Equal(60, found.PowerLineHz);
            Assert.Equal(2000, found.SamplingHz);
            Assert.Empty(found.Warnings);
        }

        string[] withEvents = [.. recordings.Where(path => BidsCompanions.Find(path).EventsPath is not null).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];
        Assert.Equal(
            ["sub-01_task-jumping_recording-bipolar_emg.edf", "sub-01_task-jumping_recording-highDensity_emg.edf", "sub-01_task-talking_emg.edf"], withEvents);
    }
}
