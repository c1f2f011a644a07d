using System.Collections.Immutable;
using ChannelAudit.Signals.Random;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Calibration.TrialStudy;

/// <summary>One session of the invented study "harbour pictures", before anything went wrong in it.</summary>
/// <param name="Participant">1 to 40.</param>
/// <param name="Number">1 or 2.</param>
internal sealed record HarbourSession(int Participant, int Number)
{
    /// <summary>Participants of the study.</summary>
    internal const int Participants = 40;

    /// <summary>The seed that everything in the study follows from.</summary>
    internal const ulong StudySeed = 20260400_000;

    /// <summary>All sessions: two each, one of those who did not come back.</summary>
    internal static ImmutableArray<HarbourSession> All { get; } =
    [
        .. Enumerable.Range(1, Participants).SelectMany(participant =>
            Enumerable.Range(1, CameOnce(participant) ? 1 : 2).Select(number => new HarbourSession(participant, number))),
    ];

    /// <summary>The participant's code.</summary>
    internal string Code => FormattableString.Invariant($"P{Participant:00}");

    /// <summary>The path below the study's folder, without extension.</summary>
    internal string Name => FormattableString.Invariant($"{Code}/session{Number}");

    /// <summary>Where the participant lives: two groups of 20.</summary>
    internal string Group => Participant % 2 == 1 ? "coast" : "inland";

    /// <summary>The seed of everything that differs from session to session.</summary>
    internal ulong Seed => StudySeed + (ulong)((10 * Participant) + Number);

    /// <summary>The trials as they took place.</summary>
    internal ImmutableArray<PlannedTrial> Trials => HarbourProtocol.Trials(Seed, Face);

    /// <summary>The plan: this face, and what every room and face adds, a whisper of mains, a tenth of crosstalk, blinks.</summary>
    internal SessionPlan Plan
    {
        get
        {
            ImmutableArray<PlannedTrial> trials = Trials;
            return new SessionPlan
            {
                Seed = Seed,
                DurationS = decimal.Ceiling(trials[^1].EndS + 2),
                Sites = [.. SitePlan.Face.Select(site => site with { RestUv = Face.RestUv })],
                Trials = trials,
                Amplifier = new AmplifierPlan { StepUv = 0.2, LowpassHz = 500 },
                Faults =
                [
                    new MainsPickup(["cheek", "brow", "eye"], 0.3) { WanderHz = 0.03 },
                    new Crosstalk("cheek", "eye", 0.1),
                    new Crosstalk("eye", "cheek", 0.1),
                    new Blinks("eye", 40, Face.BlinkEveryS),
                ],
            };
        }
    }

    private HarbourFace Face
    {
        get
        {
            // By the participant alone: both sessions show the same face.
            Pcg32 random = NoiseStream.Of(StudySeed + (ulong)Participant, "face");
            return new HarbourFace(
                RestUv: 1 + (1.2 * random.NextDouble()),
                TaskUv: 18 + (24 * random.NextDouble()),
                Answer: 0.6 + random.NextDouble(),
                BlinkEveryS: 4 + ((int)(40 * random.NextDouble()) / 10M));
        }
    }

    private static bool CameOnce(int participant) => participant % 5 == 3 || participant is 10 or 25;
}
