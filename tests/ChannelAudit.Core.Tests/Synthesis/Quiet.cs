using System.Collections.Immutable;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Tests.Synthesis;

/// <summary>Plans without noise, so that a fault stands alone.</summary>
internal static class Quiet
{
    internal static AmplifierPlan Amplifier { get; } = new() { NoiseUv = 0, OffsetUv = 0, SettlingUvPerMin = 0, Bits = 24, StepUv = 0.001 };

    internal static ImmutableArray<SitePlan> Sites { get; } =
        [.. SitePlan.Face.Select(site => site with { RestUv = 0, ElectrodeNoiseUv = 0 })];

    internal static MadeRecording Make(decimal durationS, params ImmutableArray<Fault> faults) => MadeRecording.Make(new SessionPlan
    {
        Seed = 5,
        DurationS = durationS,
        Sites = Sites,
        Amplifier = Amplifier,
        Faults = faults,
    });
}
