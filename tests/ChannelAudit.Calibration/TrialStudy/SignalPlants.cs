using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Calibration.TrialStudy;

/// <summary>What went wrong at electrodes, leads and amplifier.</summary>
internal static class SignalPlants
{

    /// <summary>All of them.</summary>
    internal static ImmutableArray<Plant> All { get; } =
    [
        Mains("P02/session1", "cheek", 8),
        Mains("P05/session2", "brow", 20),
        Mains("P09/session1", "eye", 3),
        Mains("P11/session1", "cheek", 40),
        Mains("P14/session2", "brow", 6, fromTrial: 50),
        Mains("P16/session1", "eye", 15),
        Mains("P19/session2", "cheek", 12, hz: 60),
        Mains("P36/session2", "brow", 30),
        Gel("P06/session1", ElectrodeBridge.OneNode("cheek", "eye", 0.2), "one-node gel bridge, 0.2 kOhm"),
        Gel("P12/session2", ElectrodeBridge.OneNode("cheek", "eye", 1), "one-node gel bridge, 1 kOhm"),
        Gel("P20/session1", ElectrodeBridge.TwoNodes("cheek", "eye", 0.2), "two-node gel bridge, 0.2 kOhm"),
        Gel("P30/session2", ElectrodeBridge.TwoNodes("cheek", "eye", 1), "two-node gel bridge, 1 kOhm"),
        new("P08/session1", "cheek", "lead comes off: mains and noise in place of the muscle")
        {
            Faults = trials => [new LeadOff("cheek") { Span = From(trials, 55) }],
        },
        new("P17/session2", "brow", "lead loosens: 12 uV of noise and 20 uV of mains from there on")
        {
            Faults = trials =>
            [
                new BroadbandNoise(["brow"], 12) { Span = From(trials, 60) },
                new MainsPickup(["brow"], 20) { Span = From(trials, 60) },
            ],
        },
        new("P29/session1", "eye", "lead loosens: contact makes and breaks, 120 spikes of 150 uV")
        {
            Faults = trials => [new ElectrodePops("eye", 150, 120) { Span = From(trials, 45) }],
        },
        new("P04/session2", "eye", "gain too high: contractions meet the stated rail of 200 uV")
        {
            Plan = plan => Stronger(plan, "eye", 10), Faults = _ => [new HeaderRail("eye", 200)],
        },
        new("P24/session1", "cheek", "amplifier saturates at 120 uV, below the stated rail")
        {
            Plan = plan => Stronger(plan, "cheek", 6), Faults = _ => [new HiddenRail("cheek", 120)],
        },
        new("P15/session1", "all", "recording paused twice, within a trial each time") { Faults = Pauses },
        new("P26/session2", "all", "samples held for 0.3 s in six trials, as when packets are lost") { Faults = Held },
        .. Movers(),
    ];

    private static Plant Mains(string recording, string site, double microvolts, int fromTrial = 1, double hz = 50) =>
        new(recording, site, string.Create(CultureInfo.InvariantCulture, $"mains of {hz} Hz, {microvolts} uV"))
        {
            Faults = trials => [new MainsPickup([site], microvolts, hz) { WanderHz = 0.03, Span = fromTrial == 1 ? FaultSpan.Whole : From(trials, fromTrial) }],
        };

    private static Plant Gel(string recording, ElectrodeBridge bridge, string what) => new(recording, "cheek,eye", what) { Faults = _ => [bridge] };

    private static FaultSpan From(ImmutableArray<PlannedTrial> trials, int number) => new(trials[number - 1].OnsetS - 1, null);

    private static SessionPlan Stronger(SessionPlan plan, string site, double times) => plan with
    {
        Trials =
        [
            .. plan.Trials.Select(trial => trial with
            {
                Activity =
                [
                    .. trial.Activity.Select(one =>
                        string.Equals(one.Site, site, StringComparison.Ordinal) ? one with { RmsUv = one.RmsUv * times } : one),
                ],
            }),
        ],
    };

    private static ImmutableArray<Fault> Pauses(ImmutableArray<PlannedTrial> trials) =>
    [
        .. new[] { 40, 71 }.Select(number => new RecordingGap { Span = new FaultSpan(trials[number - 1].OnsetS + 1, trials[number].OnsetS - 0.5M) }),
    ];

    private static ImmutableArray<Fault> Held(ImmutableArray<PlannedTrial> trials) =>
    [
        .. new[] { 12, 31, 47, 48, 66, 90 }.SelectMany(number => new[] { "cheek", "brow", "eye" }.Select(site =>
            new Flatline(site) { Span = new FaultSpan(trials[number - 1].OnsetS + 1.5M, trials[number - 1].OnsetS + 1.8M) })),
    ];

    /// <summary>People who sway: many inland, and those most in a storm; few at the coast, alike in all conditions.</summary>
    private static IEnumerable<Plant> Movers()
    {
        (int Participant, int Number)[] movers =
        [
            (4, 1), (10, 1), (12, 1), (16, 2), (24, 2), (28, 1), (30, 1), (38, 1), (40, 1),
            (3, 1), (13, 1), (33, 1),
        ];
        foreach ((int participant, int number) in movers)
        {
            HarbourSession session = new(participant, number);
            bool isInland = string.Equals(session.Group, "inland", StringComparison.Ordinal);
            yield return new Plant(session.Name, "all", "motion of 300 uV")
            {
                Faults = _ => [isInland ? TrialMotion.In(session, storm: 0.4, other: 0.05) : TrialMotion.In(session, storm: 0.06, other: 0.06)],
            };
        }
    }
}
