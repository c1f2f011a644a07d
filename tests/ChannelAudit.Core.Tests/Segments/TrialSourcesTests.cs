using System.Diagnostics.CodeAnalysis;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.TestKit;
using ChannelAudit.Tests.Events;
using Xunit;

namespace ChannelAudit.Tests.Segments;

[SuppressMessage("Reliability", "CA2000", Justification = "A recording in memory holds nothing to give back.")]
public sealed class TrialSourcesTests
{
    private static readonly Annotation Lasting = new(1, 2, "smile");
    private static readonly Annotation Instant = new(1, null, "smile");

    [Fact]
    public void TheFirstSourceThatYieldsATrialIsTaken()
    {
        using TemporaryFolder folder = new();
        RecordingCompanions table = new() { EventsPath = folder.Write("r_events.tsv", "onset\tduration\n3\t1\n") };
        RecordingCompanions instants = new() { EventsPath = folder.Write("s_events.tsv", "onset\tduration\n3\t0\n") };

        Assert.Equal(TrialSource.Events, Choose(ArrayRecording.Silent(30, Lasting), companions: table).Source);
        Assert.Equal(TrialSource.Annotations, Choose(ArrayRecording.Silent(30, Lasting)).Source);
        Assert.Equal(TrialSource.Blocks, Choose(ArrayRecording.Silent(30, Instant)).Source);
        Assert.Equal(TrialSource.Blocks, Choose(ArrayRecording.Silent(30)).Source);
        Assert.Equal(TrialSource.Annotations, Choose(ArrayRecording.Silent(30, Instant), new TrialSetup { WindowFromS = 0, WindowToS = 3 }).Source);
        TrialEvents passedOver = Choose(ArrayRecording.Silent(30, Lasting), companions: instants);
        Assert.Equal(TrialSource.Annotations, passedOver.Source);
        Assert.Equal(
            [new("s_events.tsv", "events", "no trial: 1 event, none with a duration; set [trials] window in the setup file to make trials of instants")],
            passedOver.Warnings.ToArray());
    }

    [Fact]
    public void ATableGivenByNameComesFirst()
    {
        using TemporaryFolder folder = new();
        RecordingCompanions beside = new() { EventsPath = folder.Write("r_events.tsv", "onset\tduration\n3\t1\n") };
        string given = folder.Write("given.tsv", "onset\tduration\n7\t1\n");

        TrialEvents chosen = TrialSources.Choose(ArrayRecording.Silent(30, Lasting), StudySetup.Empty, given, beside);

        Assert.Equal("given.tsv", chosen.File);
        Assert.Equal(7m, chosen.Events[0].OnsetS);
    }

    [Fact]
    public void TheSetupDecides()
    {
        double[] trigger = new double[3000];
        trigger[500] = 4;
        Recording made = ArrayRecording.Of(100, ("EMG", new double[3000]), ("TRIG", trigger));
        Recording recording = new()
        {
            FileName = made.FileName,
            Format = made.Format,
            DurationS = made.DurationS,
            Samples = made.Samples,
            Channels = made.Channels.SetItem(1, made.Channels[1] with { NotAudited = "a trigger channel" }),
            Annotations = [Lasting],
        };

        Assert.Equal(TrialSource.Blocks, Choose(recording, new TrialSetup { From = TrialSource.Blocks }).Source);
        Assert.Equal([new(5m, 0m, "4")], Choose(recording, new TrialSetup { From = TrialSource.Trigger }).Events.ToArray());
    }

    [Fact]
    public void ASourceThatIsNotThereIsAFaultOfUsage()
    {
        Assert.Equal(
            "made.edf: trials are to come from an events table, and there is none | give it with --events, or put it beside the recording with the ending _events.tsv",
            Fault(() => Choose(ArrayRecording.Silent(30), new TrialSetup { From = TrialSource.Events })));
        Assert.Equal(
            "made.edf: trials are to come from a trigger channel, and there is none | name another source under [trials] in the setup file, or mark the channel TRIG in channels.tsv",
            Fault(() => Choose(ArrayRecording.Silent(30), new TrialSetup { From = TrialSource.Trigger })));
        Assert.Equal(
            "setup.toml, [trials] from: trials come from \"annotations\", but --events gives e.tsv | leave one of the two out",
            Fault(() => TrialSources.Choose(
                ArrayRecording.Silent(30), new StudySetup { FileName = "setup.toml", Trials = new TrialSetup { From = TrialSource.Annotations } }, "e.tsv", RecordingCompanions.None)));
    }

    [Theory]
    [InlineData(30, "0+10 10+10 20+10")]
    [InlineData(31.9, "0+10 10+10 20+11.9")]
    [InlineData(32, "0+10 10+10 20+10 30+2")]
    [InlineData(38.5, "0+10 10+10 20+10 30+8.5")]
    [InlineData(11, "0+11")]
    [InlineData(10, "0+10")]
    [InlineData(1.5, "0+1.5")]
    [InlineData(0, "")]
    public void BlocksCoverTheWholeRecording(double durationS, string expected) => Assert.Equal(
        expected,
        string.Join(' ', Blocks.Of(durationS).Select(block => FormattableString.Invariant($"{block.OnsetS:0.###}+{block.DurationS:0.###}"))));

    private static TrialEvents Choose(Recording recording, TrialSetup? rules = null, RecordingCompanions? companions = null) =>
        TrialSources.Choose(recording, new StudySetup { Trials = rules ?? new TrialSetup() }, null, companions ?? RecordingCompanions.None);

    private static string Fault(Func<object> action)
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(action);
        Assert.Equal(FaultKind.Usage, fault.Kind);
        return $"{fault.Message} | {fault.Hint}";
    }
}
