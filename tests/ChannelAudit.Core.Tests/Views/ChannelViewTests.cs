using ChannelAudit.Core.Tests.Acceptance;
using ChannelAudit.Criteria;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.TestKit;
using ChannelAudit.Views;
using Xunit;

namespace ChannelAudit.Core.Tests.Views;

/// <summary>Views of a made session; truth: its plan.</summary>
public sealed class ChannelViewTests
{
    [Fact]
    public void TheTrialWithTheDeadStretchIsEnlargedAndTheStretchMarked()
    {
        SessionPlan plan = MadeAudit.Session(901);
        PlannedTrial struck = plan.Trials[6];
        plan = plan with { Faults = [new Flatline("brow") { Span = new FaultSpan(struck.OnsetS + 1, struck.OnsetS + 1.5M) }] };

        ChannelView view = ViewOf(plan, "brow");

        Assert.Equal(7, view.Closeup!.Trial);
        FaultMark mark = Assert.Single(view.Closeup.Marks);
        Assert.Equal("flatline", mark.Reason);
        Assert.Equal((double)struck.OnsetS + 1, mark.FromS, 2);
        Assert.Equal((double)struck.OnsetS + 1.5, mark.ToS, 2);
        Assert.InRange(view.Whole.ToS, (double)plan.DurationS - 0.01, (double)plan.DurationS + 0.01);
        Assert.Equal(plan.DurationS - (plan.DurationS % 1), view.Levels.Length);
    }

    [Fact]
    public void WithoutAFaultTheStrongestTrialIsEnlarged()
    {
        // The contraction of the cheek is the second trial: 25 µV against 9 in the scored ones.
        ChannelView view = ViewOf(MadeAudit.WithConfusers(MadeAudit.Session(902), new MainsPickup(["brow"], 5)), "cheek");

        Assert.Equal(2, view.Closeup!.Trial);
        Assert.Empty(view.Closeup.Marks);
        Assert.InRange(view.Closeup.Trace.Greatest.Max(), 40, 200);
        Assert.Equal(50, view.HarmonicsHz[0], 0);
    }

    [Fact]
    public void ViewsChangeNoNumberAndAreThereOnlyWhenAskedFor()
    {
        SessionPlan plan = MadeAudit.Session(903);
        RecordingResult with = Audited(plan, withViews: true);
        RecordingResult without = Audited(plan, withViews: false);

        Assert.All(without.Channels, channel => Assert.Null(channel.View));
        Assert.Equal(
            without.Channels.SelectMany(channel => channel.Measures).Select(measure => measure.Value),
            with.Channels.SelectMany(channel => channel.Measures).Select(measure => measure.Value));
    }

    private static ChannelView ViewOf(SessionPlan plan, string site) => MadeAudit.Channel(Audited(plan, withViews: true), site).View!;

    private static RecordingResult Audited(SessionPlan plan, bool withViews)
    {
        using TemporaryFolder folder = new();
        string path = folder.In("session.edf");
        EdfFiles.Write(MadeRecording.Make(plan), path);
        return RecordingAudit.Of(
            new RecordingEntry("session", path, "session.edf"), SetupFile.Parse(SetupText.Of(plan), "setup.toml"), DefaultCriteria.All, null, CancellationToken.None, withViews);
    }
}
