using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Deciding;

/// <summary>A decision holds for what it was made about: other bytes, another trial, no such channel, and it is told and not applied.</summary>
public sealed class StaleDecisionTests : IDisposable
{
    private readonly DecidedRun _run = new();

    public StaleDecisionTests() => _run.Decide("cheek", 3, Grade.Pass);

    public void Dispose() => _run.Dispose();

    [Fact]
    public void OtherBytesOfTheRecording() => AssertStale("the recording has changed since (another SHA-256)", recording => recording with { Sha256 = new string('0', 64) });

    [Fact]
    public void NoSuchChannel() => AssertStale("there is no channel 'cheek' any more", recording => recording with { Channels = recording.Channels.RemoveAt(0) });

    [Fact]
    public void NoSuchTrial() => AssertStale("there is no trial 3 any more", recording => WithTrials(recording, recording.Trials.RemoveAt(2)));

    [Fact]
    public void AnotherOnset() => AssertStale("trial 3 is another one now: onset 21 s instead of 20.5 s", recording => WithTrial(recording, 21m, 3m, "happy"));

    [Fact]
    public void AnotherDuration() => AssertStale("trial 3 is another one now: duration 2 s instead of 3 s", recording => WithTrial(recording, 20.5m, 2m, "happy"));

    [Fact]
    public void AnotherLabel() => AssertStale("trial 3 is another one now: label 'angry' instead of label 'happy'", recording => WithTrial(recording, 20.5m, 3m, "angry"));

    [Fact]
    public void NoLabelAnyMore() => AssertStale("trial 3 is another one now: no label instead of label 'happy'", recording => WithTrial(recording, 20.5m, 3m, null));

    [Fact]
    public void TheSameNumberWrittenOtherwiseIsTheSameTrial()
    {
        RecordingResult now = _run.With(WithTrial(Computed(), 20.500m, 3.0m, "happy"));

        Assert.Equal(DecisionState.InForce, Assert.Single(now.Decisions!.All).State);
        Assert.Empty(now.Decisions.Warnings);
    }

    [Fact]
    public void AnotherComputedVerdictIsFlaggedAndTheDecisionHolds()
    {
        RecordingResult then = Computed();
        ChannelResult cheek = then.Channels[0];
        RecordingResult now = _run.With(then with
        {
            Channels = then.Channels.SetItem(0, cheek with { Cells = cheek.Cells.SetItem(2, cheek.Cells[2] with { Verdict = Grade.Questionable, Reasons = ["clipping"] }) }),
        });

        StatedDecision decision = Assert.Single(now.Decisions!.All);
        Assert.Equal((DecisionState.InForce, true), (decision.State, decision.IsFlagged));
        Assert.Equal("the computed verdict was reject (line-noise, bridge) when it was decided and is questionable (clipping) now", decision.Note);
        Assert.Equal(Grade.Pass, FinalVerdict.OfTrial(now, now.Channels[0], now.Channels[0].Cells[2]));
        Assert.StartsWith("day1+p07, cheek, trial 3 (happy): holds, but the computed verdict was", Assert.Single(now.Decisions.Warnings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OtherCriteriaAreSaidAndWarnOfNothing()
    {
        RecordingResult now = _run.With(criteria: new string('9', 64));

        Assert.Equal("other criteria were in force when it was decided", Assert.Single(now.Decisions!.All).Note);
        Assert.Empty(now.Decisions.Warnings);
        Assert.Equal(Grade.Pass, FinalVerdict.OfTrial(now, now.Channels[0], now.Channels[0].Cells[2]));
    }

    [Fact]
    public void AStaleOneTakesNoPlaceOfOneThatHolds()
    {
        RecordingResult changed = Computed() with { Sha256 = new string('0', 64) };
        using DecidedRun other = new(changed, SampleResults.Clean("day1+p08"), SampleResults.Blocks());
        other.Decide("cheek", 3, Grade.Pass);
        other.Decide("cheek", 3, Grade.Questionable);

        RecordingDecisions decisions = other.With(Computed()).Decisions!;

        Assert.All(decisions.All, one => Assert.Equal(DecisionState.Stale, one.State));
        Assert.Null(decisions.OfTrial("cheek", 3, Grade.Reject));
    }

    private static RecordingResult Computed() => SampleResults.Faulty();

    private static RecordingResult WithTrial(RecordingResult recording, decimal onsetS, decimal durationS, string? label) =>
        WithTrials(recording, recording.Trials.SetItem(2, recording.Trials[2] with { OnsetS = onsetS, DurationS = durationS, Label = label }));

    private static RecordingResult WithTrials(RecordingResult recording, ImmutableArray<Segments.Trial> trials) => recording with { Trials = trials };

    private void AssertStale(string cause, Func<RecordingResult, RecordingResult> change)
    {
        RecordingResult now = _run.With(change(Computed()));

        StatedDecision decision = Assert.Single(now.Decisions!.All);
        Assert.Equal((DecisionState.Stale, cause, true), (decision.State, decision.Note, decision.IsFlagged));
        Assert.Equal($"day1+p07, cheek, trial 3 (happy): not applied: {cause}; decide again, or withdraw it", Assert.Single(now.Decisions.Warnings).Message);
        Assert.All(now.Channels, channel => Assert.All(channel.Cells, cell => Assert.Equal(cell.Verdict, FinalVerdict.OfTrial(now, channel, cell))));
    }
}
