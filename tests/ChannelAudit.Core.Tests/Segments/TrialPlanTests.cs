using System.Diagnostics.CodeAnalysis;
using ChannelAudit.Events;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Tests.Events;
using Xunit;

namespace ChannelAudit.Tests.Segments;

[SuppressMessage("Reliability", "CA2000", Justification = "A recording in memory holds nothing to give back.")]
public sealed class TrialPlanTests
{
    [Fact]
    public void TrialsAreNumberedByOnsetThenFileOrder()
    {
        TrialSet set = Plan(new TrialSetup(), new(20, 3, "b"), new(5, 3, "first"), new(10, 1, "x"), new(10, 2, "y"), new(4, 0, "instant"), new(4, null, "open"));

        Assert.Equal(["1 first 5-8", "2 x 10-11", "3 y 10-12", "4 b 20-23"], set.Trials.Select(Shown).ToArray());
        Assert.Equal([1, 2, 3, 4], set.Trials.Select(trial => trial.Number).ToArray());
    }

    [Fact]
    public void AWindowCutsTrialsAndMakesTrialsOfInstants()
    {
        TrialSet set = Plan(new TrialSetup { WindowFromS = 0.5m, WindowToS = 3m, BaselineS = 1m }, new(5, 8, "a"), new(20, 0, "b"), new(30, null, "c"));

        Assert.Equal(["1 a 5.5-8.0", "2 b 20.5-23.0", "3 c 30.5-33.0"], set.Trials.Select(trial => FormattableString.Invariant($"{trial.Number} {trial.Label} {trial.WindowFromS:0.0}-{trial.WindowToS:0.0}")).ToArray());
        Assert.Equal([4m, 19m, 29m], set.Trials.Select(trial => trial.BaselineFromS!.Value));
        Assert.Equal([8m, 0m, 0m], set.Trials.Select(trial => trial.DurationS));
        Assert.Empty(set.Warnings);
    }

    [Fact]
    public void RolesFollowLabelsExactlyButForBlanks()
    {
        StudySetup setup = new()
        {
            Trials = new TrialSetup { Rest = ["rest", " quiet"] },
            Sites = [new SiteSetup { Name = "cheek", Channel = "EMG", Task = "raise lip corner" }, new SiteSetup { Name = "eye", Channel = "EMG2" }],
        };

        TrialSet set = TrialPlan.Of(
            ArrayRecording.Silent(100),
            Source(new(1, 1, "rest"), new(3, 1, "Rest"), new(5, 1, " quiet "), new(7, 1, "raise lip corner "), new(9, 1, null), new(11, 1, "happy")),
            setup);

        Assert.Equal(
            [TrialRole.Rest, TrialRole.Scored, TrialRole.Rest, TrialRole.Task, TrialRole.Scored, TrialRole.Scored],
            set.Trials.Select(trial => trial.Role));
        Assert.Null(set.Trials[4].Label);
    }

    [Fact]
    public void OddTrialsAreKeptAndSaid()
    {
        TrialSet set = Plan(new TrialSetup(), new(-1, 2, "a"), new(5, 3, "b"), new(5, 3, "b"), new(7, 3, "c"), new(99, 2, "d"), new(100, 2, "e"));

        Assert.Equal(6, set.Trials.Length);
        Assert.Equal(
            ["trial 1: starts before the first sample", "trial 6: starts after the last sample", "trial 5: runs past the end of the recording",
                "trial 3: repeats trial 2", "trial 4: overlaps trial 2", "trial 6: overlaps trial 5"],
            set.Warnings.Select(warning => $"{warning.Place}: {warning.Message}").ToArray());
        Assert.All(set.Warnings, warning => Assert.Equal("e.tsv", warning.File));
    }

    [Fact]
    public void ATrialThatEndsWithTheRecordingIsNotPastIt() => Assert.Empty(Plan(new TrialSetup(), new RecordedEvent(90, 10, "a")).Warnings);

    [Fact]
    public void InstantsWithoutAWindowAreNoTrialsAndThatIsSaid()
    {
        TrialSet set = Plan(new TrialSetup(), new(1, 0, "a"), new(2, null, "b"));

        Assert.Empty(set.Trials);
        Assert.Equal(
            [new("e.tsv", "events", "no trial: 2 events, none with a duration; set [trials] window in the setup file to make trials of instants")],
            set.Warnings.ToArray());
    }

    [Fact]
    public void ANegativeDurationIsRefused()
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Plan(new TrialSetup(), new RecordedEvent(1, -1, "a")));

        Assert.Equal("e.tsv, event 1: the duration -1 is negative", fault.Message);
    }

    [Theory]
    [InlineData(500, null)]
    [InlineData(501, "events: 503 trials overlap: together they are 50 times as long as the recording")]
    public void TrialsUponTrialsAreRefused(int trials, string? refusal)
    {
        RecordedEvent[] events = [.. Enumerable.Range(0, trials).Select(i => new RecordedEvent(i * 0.1m, 10, "a")), new(2000, 1e6m, "behind the end"), new(-5000, 4000, "before the start")];

        string? said = Record.Exception(() => Plan(new TrialSetup(), events))?.Message;

        Assert.Equal(refusal, said?.Replace(Source().File + ":", "events:", StringComparison.Ordinal));
    }

    [Fact]
    public void BlocksHaveNeitherWindowNorBaseline()
    {
        TrialEvents blocks = new(TrialSource.Blocks, "r.edf", [new(0, 10, null)], []);
        TrialSet set = TrialPlan.Of(ArrayRecording.Silent(10), blocks, new StudySetup { Trials = new TrialSetup { WindowFromS = 1, WindowToS = 3, BaselineS = 1 } });

        Assert.Equal((0m, 10m, null), (set.Trials[0].WindowFromS, set.Trials[0].WindowToS, set.Trials[0].BaselineFromS));
    }

    private static TrialSet Plan(TrialSetup rules, params RecordedEvent[] events) =>
        TrialPlan.Of(ArrayRecording.Silent(100), Source(events), new StudySetup { Trials = rules });

    private static TrialEvents Source(params RecordedEvent[] events) => new(TrialSource.Events, "e.tsv", [.. events], []);

    private static string Shown(Trial trial) => FormattableString.Invariant($"{trial.Number} {trial.Label} {trial.WindowFromS}-{trial.WindowToS}");
}
