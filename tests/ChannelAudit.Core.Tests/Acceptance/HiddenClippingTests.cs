using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>What was cut off where no sample shows it: said to be hidden, never claimed and never cleared. Truth: where the plan cuts.</summary>
public sealed class HiddenClippingTests
{
    private const double RailUv = 40;

    /// <summary>The header may say what was done or call it DC: a high-pass of 10 Hz is seen in the spectrum too.</summary>
    [Theory]
    [InlineData(1201, 10.0)]
    [InlineData(1202, 10.0)]
    [InlineData(1203, 0.0)]
    [InlineData(1204, null)]
    public void ARailInFrontOfAHighPassMovesAndIsSaidToMayBeHidden(ulong seed, double? statedHz)
    {
        SessionPlan plan = Session(seed) with { Faults = [new MovingRail("cheek", RailUv, 10)] };
        using Recording made = MadeRecording.Make(plan).Open();
        using Recording recording = Altered.Stating(made, new Prefilter(statedHz, null, [], string.Empty));

        ChannelResult cheek = MadeAudit.Channel(MadeAudit.Of(recording, plan), "cheek");

        Assert.DoesNotContain(ReasonCode.Clipping, cheek.Reasons, StringComparer.Ordinal);
        Assert.Contains(cheek.NotAssessed, open => IsClipping(open) && open.Cause.EndsWith("what was cut off before it may be hidden", StringComparison.Ordinal));
    }

    /// <summary>The same rail without the filter is found, so that the test above hides something that is there.</summary>
    [Fact]
    public void WithoutTheFilterTheSameRailIsFound() => Assert.Contains(
        ReasonCode.Clipping, MadeAudit.Channel(MadeAudit.Of(Session(1211) with { Faults = [new HiddenRail("cheek", RailUv)] }), "cheek").Reasons, StringComparer.Ordinal);

    [Fact]
    public void FiltersAfterDigitisingLeaveEveryTrialOpen()
    {
        SessionPlan plan = Session(1221);
        using Recording made = MadeRecording.Make(plan).Open();
        using Recording recording = Altered.Stating(made, made.Channels[0].Prefilter with { Software = "smoothing" });

        RecordingResult result = MadeAudit.Of(recording, plan);

        Assert.All(
            result.Channels.SelectMany(channel => channel.Cells),
            cell => Assert.Contains(cell.NotAssessed, open => IsClipping(open) && open.Cause.StartsWith("filtered after digitising (smoothing)", StringComparison.Ordinal)));
    }

    [Fact]
    public void WhereNothingWasFilteredClippingIsAssessed() =>
        Assert.All(MadeAudit.Of(Session(1231)).Channels, channel => Assert.DoesNotContain(channel.NotAssessed, IsClipping));

    /// <summary>The limit of what is known, as docs/measures/clipping.md says: peaks that are rounded off look like a muscle's.</summary>
    [Fact]
    public void ASoftRailIsNotSeen() => Assert.DoesNotContain(
        ReasonCode.Clipping, MadeAudit.Channel(MadeAudit.Of(Session(1241) with { Faults = [new SoftRail("cheek", RailUv)] }), "cheek").Reasons, StringComparer.Ordinal);

    private static SessionPlan Session(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1), 4);
        return plan with { Amplifier = plan.Amplifier with { OffsetUv = 10 } };
    }

    private static bool IsClipping(NotAssessed open) => string.Equals(open.Reason, ReasonCode.Clipping, StringComparison.Ordinal);
}
