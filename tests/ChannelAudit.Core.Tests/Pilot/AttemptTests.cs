using System.Collections.Immutable;
using ChannelAudit.Pilot;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Pilot;

/// <summary>What a redo has changed.</summary>
public sealed class AttemptTests
{
    [Fact]
    public void ARedoSaysWhatItChanged()
    {
        SessionPlan good = PilotCase.Recorded(1);
        SitePlan noisy = good.Sites[0] with { ElectrodeNoiseUv = 6 };
        PilotReport before = new PilotCase { Plan = good with { Sites = [noisy, .. good.Sites.Skip(1)], Faults = [ElectrodeBridge.TwoNodes("cheek", "eye", 0.5)] } }.Run();
        PilotReport after = new PilotCase { Plan = good with { Seed = 2 } }.Run();

        AttemptSeries first = AttemptSeries.With([], before, null);
        AttemptSeries second = AttemptSeries.With(first.All, after, null);

        Assert.Empty(first.Changes);
        Assert.Equal(2, second.Now.Number);
        Assert.Contains("cheek and eye: bridge gone", second.Changes, StringComparer.Ordinal);
        Assert.Contains(second.Changes, line => line.StartsWith("cheek: reject to pass, noise at rest ", StringComparison.Ordinal));
        Assert.DoesNotContain(second.Changes, line => line.StartsWith("brow", StringComparison.Ordinal));
    }

    [Fact]
    public void TheSameBytesAreTheSameAttempt()
    {
        PilotReport report = new PilotCase { Plan = PilotCase.Recorded(3) with { Faults = [ElectrodeBridge.TwoNodes("cheek", "eye", 0.5)] } }.Run();
        ImmutableArray<PilotAttempt> once = AttemptSeries.With([], report, "the participant has to leave at noon").All;
        AttemptSeries twice = AttemptSeries.With(once, report, null);

        Assert.Equal(1, Assert.Single(twice.All).Number);
        Assert.Equal("the participant has to leave at noon", twice.Now.StartedBecause);
        Assert.Empty(twice.Changes);
    }
}
