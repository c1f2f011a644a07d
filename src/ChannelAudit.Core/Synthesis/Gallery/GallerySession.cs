using System.Collections.Immutable;
using ChannelAudit.Segments;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>
/// The half minute that every specimen lasts: rest, a contraction, two photographs, rest; and the whisper of mains of every room. Offsets are
/// left out, so that limits of the input stand where they are said to be.
/// </summary>
public static class GallerySession
{
    /// <summary>The site of specimens that need one only.</summary>
    public const string Cheek = "cheek";

    /// <summary>The site that keeps the cheek company, and sees blinks.</summary>
    public const string Brow = "brow";

    /// <summary>The neighbour in specimens that need two.</summary>
    public const string Eye = "eye";

    /// <summary>The number of a trial of the cheek: rest from 1 to 7 s, a contraction from 8 to 12 s, photographs from 14 and 18 s for 3 s each.</summary>
    public const int Rest = 1, Task = 2, Scored = 3;

    /// <summary>The mains of the gallery's room.</summary>
    public const double MainsHz = 50;

    private const decimal DurationS = 30;
    private const double RoomUv = 0.3;

    /// <summary>The cheek, which is shown, and the brow, which keeps it company.</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="faults">What is made of it, beside the room's whisper of mains.</param>
    /// <param name="contractionUv">The contraction's amplitude in µV rms.</param>
    /// <param name="answerUv">The answer to the photographs in µV rms; 0: none, the muscle rests.</param>
    internal static SessionPlan OfCheek(ulong seed, ImmutableArray<Fault> faults, double contractionUv = 25, double answerUv = 0) => new()
    {
        Seed = seed,
        DurationS = DurationS,
        Sites = [SitePlan.Face[0] with { Adjacent = [] }, SitePlan.Face[1]],
        Amplifier = Amplifier,
        Trials =
        [
            Trial(1, 6, "rest", TrialRole.Rest),
            Trial(8, 4, "raise lip corner", TrialRole.Task, (Cheek, contractionUv)),
            Trial(14, 3, "meadow", TrialRole.Scored, (Cheek, answerUv)),
            Trial(18, 3, "meadow", TrialRole.Scored, (Cheek, answerUv)),
            Trial(23, 6, "rest", TrialRole.Rest),
        ],
        Faults = [new MainsPickup([Cheek, Brow], RoomUv), .. faults],
    };

    /// <summary>Cheek and eye: each contracts alone, then both answer to the photographs.</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="faults">What is made of them, beside the room's whisper of mains.</param>
    /// <param name="answersUv">The answers of cheek and eye in µV rms.</param>
    internal static SessionPlan OfCheekAndEye(ulong seed, ImmutableArray<Fault> faults, (double Cheek, double Eye) answersUv) => new()
    {
        Seed = seed,
        DurationS = DurationS + 6,
        Sites = [SitePlan.Face[0], SitePlan.Face[2]],
        Amplifier = Amplifier,
        Trials =
        [
            Trial(1, 6, "rest", TrialRole.Rest),
            Trial(8, 4, "raise lip corner", TrialRole.Task, (Cheek, 25)),
            Trial(14, 4, "close eyes firmly", TrialRole.Task, (Eye, 25)),
            Trial(20, 3, "meadow", TrialRole.Scored, (Cheek, answersUv.Cheek), (Eye, answersUv.Eye)),
            Trial(24, 3, "meadow", TrialRole.Scored, (Cheek, answersUv.Cheek), (Eye, answersUv.Eye)),
            Trial(29, 6, "rest", TrialRole.Rest),
        ],
        Faults = [new MainsPickup([Cheek, Eye], RoomUv), .. faults],
    };

    private static AmplifierPlan Amplifier { get; } = new() { OffsetUv = 0, SettlingUvPerMin = 0 };

    private static PlannedTrial Trial(
        decimal onsetS, decimal durationS, string label, TrialRole role, params ReadOnlySpan<(string Site, double RmsUv)> activity)
    {
        ImmutableArray<SiteActivity>.Builder active = ImmutableArray.CreateBuilder<SiteActivity>();
        foreach ((string site, double rmsUv) in activity)
        {
            if (rmsUv > 0)
            {
                active.Add(new SiteActivity(site, rmsUv));
            }
        }

        return new PlannedTrial { OnsetS = onsetS, DurationS = durationS, Label = label, Role = role, Activity = active.ToImmutable() };
    }
}
