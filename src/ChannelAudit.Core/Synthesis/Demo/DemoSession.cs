using System.Collections.Immutable;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Demo;

/// <summary>One session of the demo's study: who sat there, what went wrong, and what the impedance meter showed.</summary>
public sealed record DemoSession
{
    /// <summary>The participant's code; the name of the session's files.</summary>
    public required string Code { get; init; }

    /// <summary>Decides the session's random numbers.</summary>
    public required ulong Seed { get; init; }

    /// <summary>What happened, in a sentence.</summary>
    public required string Story { get; init; }

    /// <summary>The fault of the story, or none.</summary>
    public ImmutableArray<Fault> Faults { get; init; } = [];

    /// <summary>The trials.</summary>
    public ImmutableArray<PlannedTrial> Trials { get; init; } = DemoProtocol.Trials;

    /// <summary>The day, as in <c>2026-03-12</c>.</summary>
    public required string Day { get; init; }

    /// <summary>The contacts before the session, which are those of the recording.</summary>
    public required DemoContacts Before { get; init; }

    /// <summary>The contacts after the session.</summary>
    public required DemoContacts After { get; init; }

    /// <summary>The plan: the story, and what every room and face adds, a whisper of mains and a tenth of crosstalk.</summary>
    public SessionPlan Plan => new()
    {
        Seed = Seed,
        DurationS = Trials[^1].EndS + 2,
        Sites = Before.Sites,
        Trials = Trials,
        Amplifier = new AmplifierPlan { StepUv = 0.2 },
        Faults =
        [
            new MainsPickup(["cheek", "brow", "eye"], 0.3) { WanderHz = 0.03 },
            new Crosstalk("cheek", "eye", 0.1),
            new Crosstalk("eye", "cheek", 0.1),
            .. Faults,
        ],
    };
}
