using System.Collections.Immutable;
using ChannelAudit.Synthesis.Faults;
using static ChannelAudit.Synthesis.Demo.DemoProtocol;

namespace ChannelAudit.Synthesis.Demo;

/// <summary>The demo's study: an invented one, no person was recorded. Six sessions, five of them with one fault each.</summary>
/// <remarks>
/// A back room of an old ferry house without windows; participants look at photographs of harbours, meadows and orchards while cheek, brow
/// and eye are recorded. Every fault lies well beyond its limit, so that nobody has to argue about it.
/// </remarks>
public static class DemoStudy
{
    /// <summary>The sessions in the order of their days.</summary>
    public static ImmutableArray<DemoSession> Sessions { get; } = [Clean(), LooseLead(), Gel(), HighGain(), LeadOff(), NeverSettles()];

    private static DemoSession Clean() => new()
    {
        Code = "K03",
        Seed = 20260303,
        Day = "2026-03-03",
        Story = "nothing went wrong",
        Before = new DemoContacts((1.9, 2.2), (2.1, 1.8), (2.0, 2.3), 1.6),
        After = new DemoContacts((1.6, 1.9), (1.8, 1.6), (1.8, 2.0), 1.4),
    };

    private static DemoSession LooseLead() => new()
    {
        Code = "K07",
        Seed = 20260305,
        Day = "2026-03-05",
        Story = "a lead at the cheek worked loose in mid-session and picked up mains from there on",
        Faults = [new MainsPickup(["cheek"], 30) { WanderHz = 0.03, Span = new FaultSpan(Trial(16).OnsetS - 1, null) }],
        Before = new DemoContacts((2.2, 2.0), (1.9, 2.0), (2.4, 2.1), 1.7),
        After = new DemoContacts((34, 1.8), (1.7, 1.8), (2.1, 1.9), 1.5),
    };

    private static DemoSession Gel() => new()
    {
        Code = "K11",
        Seed = 20260310,
        Day = "2026-03-10",
        Story = "gel ran from cheek to eye and joined the two sites at both electrodes",
        Faults = [ElectrodeBridge.TwoNodes("cheek", "eye", 0.2)],
        Before = new DemoContacts((2.3, 2.1), (2.0, 2.2), (2.2, 2.4), 1.8),
        After = new DemoContacts((2.0, 1.8), (1.7, 1.9), (1.9, 2.1), 1.6),
    };

    private static DemoSession HighGain() => new()
    {
        Code = "K12",
        Seed = 20260311,
        Day = "2026-03-11",
        Story = "the gain of the eye was set too high; squeezing and squinting at glittering water met the rail",
        Faults = [new HeaderRail("eye", 200)],
        Trials = WithStrongEye(200, 150),
        Before = new DemoContacts((2.0, 1.7), (2.2, 2.3), (1.9, 2.0), 1.5),
        After = new DemoContacts((1.8, 1.5), (1.9, 2.0), (1.7, 1.8), 1.4),
    };

    private static DemoSession LeadOff() => new()
    {
        Code = "K15",
        Seed = 20260313,
        Day = "2026-03-13",
        Story = "the brow's lead fell off; four trials later the recording was stopped, the lead plugged in, and the recording went on",
        Faults =
        [
            new Flatline("brow") { Span = new FaultSpan(Trial(13).OnsetS + 1, Trial(17).OnsetS + 2) },
            new RecordingGap { Span = new FaultSpan(Trial(17).OnsetS + 2, Trial(17).OnsetS + 7.5M) },
        ],
        Trials = DelayedFrom(18, 4),
        Before = new DemoContacts((2.1, 2.3), (2.3, 1.9), (1.8, 2.2), 1.9),
        After = new DemoContacts((1.8, 2.0), (2.0, 1.7), (1.6, 1.9), 1.6),
    };

    private static DemoSession NeverSettles() => new()
    {
        Code = "K18",
        Seed = 20260318,
        Day = "2026-03-18",
        Story = "a contact at the brow never settled and drifted all the while",
        Faults = [new Drift("brow", 1200)],
        Before = new DemoContacts((2.2, 1.9), (21, 26), (2.1, 1.8), 1.6),
        After = new DemoContacts((1.9, 1.7), (13, 19), (1.8, 1.6), 1.5),
    };
}
