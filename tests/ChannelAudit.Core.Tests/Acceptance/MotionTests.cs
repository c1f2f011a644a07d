using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Motion is found at its size; blinks at the eye are no motion. Limits: docs/criteria.md; truth: the plan of the session.</summary>
public sealed class MotionTests
{
    private const string Reason = "low-frequency";

    public static TheoryData<int> Sessions => [0, 1, 2, 3, 4, 5];

    [Theory]
    [MemberData(nameof(Sessions))]
    public void ItIsRejectedAboveItsLimitAndOnlyInItsTrials(int session)
    {
        SessionPlan plan = MadeAudit.Session(800 + (ulong)session, MadeAudit.Rates[session % MadeAudit.Rates.Length]);

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(
            plan,
            Sway(plan, "cheek", 6, 1.5 * 50),
            Sway(plan, "cheek", 9, 0.7 * 50),
            Sway(plan, "eye", 7, 1.5 * 50),
            Sway(plan, "eye", 10, 0.7 * 50),
            new Blinks("brow", 150, 5)));

        Assert.Equal([6], MadeAudit.RejectedFor(result, "cheek", Reason));
        Assert.Equal([6, 9], MadeAudit.FoundFor(result, "cheek", Reason));
        Assert.Equal([7], MadeAudit.RejectedFor(result, "eye", Reason));
        Assert.Equal([7, 10], MadeAudit.FoundFor(result, "eye", Reason));
        Assert.Empty(MadeAudit.FoundFor(result, "brow", Reason));
    }

    [Theory]
    [InlineData(811, 150)]
    [InlineData(812, 250)]
    [InlineData(813, 280)]
    public void BlinksAreMotionNowhereButAtTheCheek(ulong seed, double peakUv)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1));

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(
            plan, new Blinks("eye", peakUv, 4.5M), new Blinks("brow", -peakUv, 4.5M), new Blinks("cheek", peakUv, 4.5M)));

        Assert.Empty(MadeAudit.FoundFor(result, "eye", Reason));
        Assert.Empty(MadeAudit.FoundFor(result, "brow", Reason));
        Assert.NotEmpty(MadeAudit.FoundFor(result, "cheek", Reason));
        Assert.Equal(["brow", "eye"], result.Information.Where(IsBlink).Select(finding => finding.Channels[0]), StringComparer.Ordinal);
        Assert.All(result.Information.Where(IsBlink), finding => Assert.Equal(Grade.Pass, finding.Grade));
    }

    /// <summary>One blink can reach three of the five segments of 3 s, and a strong contraction swings widely by itself.</summary>
    [Theory]
    [InlineData(461)]
    [InlineData(462)]
    [InlineData(463)]
    public void ABlinkOnAStrongContractionIsNoMotion(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed) with { Faults = [new Blinks("eye", 350, 4.3M)] };
        plan = plan with { Trials = [.. plan.Trials.Select(trial => trial.Role == Segments.TrialRole.Task ? trial with { Activity = [.. trial.Activity.Select(one => one with { RmsUv = 40 })] } : trial)] };

        Assert.Empty(MadeAudit.FoundFor(MadeAudit.Of(plan), "eye", "low-frequency"));
    }

    [Fact]
    public void SwingsOfHalfAMillivoltAreMotionAtTheEyeToo()
    {
        SessionPlan plan = MadeAudit.Session(814, new Rational(1000, 1));

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(plan, new Blinks("eye", 600, 4.5M)));

        Assert.NotEmpty(MadeAudit.FoundFor(result, "eye", Reason));
    }

    [Fact]
    public void AHighPassedFileIsNotClearedButWhatIsSeenCounts()
    {
        SessionPlan plan = MadeAudit.Session(815, new Rational(1000, 1)) with { Amplifier = new AmplifierPlan { HighpassHz = 10 } };

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(plan, Sway(plan, "cheek", 6, 800)));

        Assert.Equal([6], MadeAudit.FoundFor(result, "cheek", Reason));
        Assert.All(result.Channels, channel => Assert.All(channel.Cells, cell =>
            Assert.Contains(new NotAssessed(Reason, "high-pass 10 Hz claimed by the file"), cell.NotAssessed)));
    }

    private static bool IsBlink(Finding finding) => string.Equals(finding.Reason, Reason, StringComparison.Ordinal);

    /// <summary>A sway that has an amplitude from 2 to 15 Hz, over a trial and a second around it.</summary>
    private static Motion Sway(SessionPlan plan, string site, int trial, double lowUv) =>
        new([site], lowUv / Math.Sqrt(NoiseBand.Motion.ShareBetween(2, 15)))
        {
            Span = new FaultSpan(plan.Trials[trial - 1].OnsetS - 1, plan.Trials[trial - 1].EndS + 1),
        };
}
