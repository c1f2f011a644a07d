using ChannelAudit.Results;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>
/// Faults within a trial: at 1.5 times its reject limit the trial is rejected for that reason, at 0.7 times it is questionable, and no other
/// trial carries the reason. Limits: docs/criteria.md (engineering judgement); truth: the plan of the session.
/// </summary>
public sealed class LocalFaultTests
{
    public static TheoryData<int> Sessions => [.. LocalFaults.All];

    [Theory]
    [MemberData(nameof(Sessions))]
    public void ShareAndRunAtTheStatedRailAreRejectedAboveTheirLimits(int session)
    {
        RecordingResult result = LocalFaults.Of(session);

        Assert.Equal([5, 7], MadeAudit.RejectedFor(result, "cheek", "clipping"));
        Assert.Equal([5, 6, 7, 8], MadeAudit.FoundFor(result, "cheek", "clipping"));
    }

    [Theory]
    [MemberData(nameof(Sessions))]
    public void ShareAndRunAtAHiddenRailAreRejectedAboveTheirLimits(int session)
    {
        RecordingResult result = LocalFaults.Of(session);

        Assert.Equal([5, 7], MadeAudit.RejectedFor(result, "eye", "clipping"));
        Assert.Equal([5, 6, 7, 8], MadeAudit.FoundFor(result, "eye", "clipping"));
        Assert.Empty(MadeAudit.FoundFor(result, "brow", "clipping"));
    }

    [Theory]
    [MemberData(nameof(Sessions))]
    public void HeldAndTogglingStretchesAreRejectedAboveTheirLimit(int session)
    {
        RecordingResult result = LocalFaults.Of(session);

        Assert.Equal([5, 7], MadeAudit.RejectedFor(result, "brow", "flatline"));
        Assert.Equal([5, 6, 7, 8], MadeAudit.FoundFor(result, "brow", "flatline"));
        Assert.Empty(MadeAudit.FoundFor(result, "cheek", "flatline"));
        Assert.Empty(MadeAudit.FoundFor(result, "eye", "flatline"));
    }

    [Theory]
    [MemberData(nameof(Sessions))]
    public void APauseAndATrialPastTheEndAreRejectedAboveTheirLimitOnEveryChannel(int session)
    {
        RecordingResult result = LocalFaults.Of(session);

        int[] rejected = LocalFaults.EndsFarTooEarly(session) ? [9, 15] : [9];
        Assert.All(result.Channels, channel => Assert.Equal(rejected, MadeAudit.RejectedFor(result, channel.Name, "dropout")));
        Assert.All(result.Channels, channel => Assert.Equal([9, 10, 15], MadeAudit.FoundFor(result, channel.Name, "dropout")));
    }

    [Theory]
    [MemberData(nameof(Sessions))]
    public void ABaselineThatRunsAwayIsRejectedAboveItsLimitEitherWay(int session)
    {
        RecordingResult result = LocalFaults.Of(session);

        Assert.Equal([11], MadeAudit.RejectedFor(result, "brow", "drift"));
        Assert.Contains(12, MadeAudit.FoundFor(result, "brow", "drift"));
        Assert.Equal([13], MadeAudit.RejectedFor(result, "cheek", "drift"));
        Assert.Contains(14, MadeAudit.FoundFor(result, "cheek", "drift"));
        Assert.Empty(MadeAudit.RejectedFor(result, "eye", "drift"));
    }

    [Theory]
    [MemberData(nameof(Sessions))]
    public void NoOtherReasonIsGivenBesideThem(int session)
    {
        RecordingResult result = LocalFaults.Of(session);

        // Trials 5 and 6 are left out: 15 evenly spread blocks a second are a comb of 15 Hz, which has a tooth at 150 Hz.
        string[] others = ["line-noise", "narrow-band", "bridge"];
        string[] found =
        [
            .. MadeAudit.Sites.SelectMany(site => others.SelectMany(reason =>
                MadeAudit.FoundFor(result, site, reason).Except([5, 6]).Select(trial => FormattableString.Invariant($"{site} {trial} {reason}")))),
        ];
        Assert.Empty(found);
    }
}
