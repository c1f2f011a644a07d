using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>Noise of a poor contact, beside a tense muscle and beside an answer of the same size.</summary>
internal static class NoiseFloorSubject
{
    private const double SizeUv = 15;
    private static readonly ImmutableArray<GalleryExcerpt> Excerpts = [new(14.5, 14.7, "during a photograph")];

    /// <summary>The entry.</summary>
    public static GallerySubject Make() => new()
    {
        Code = ReasonCode.NoiseFloor,
        Title = "Noise of a poor contact",
        Telling = "Noise is as strong at the top of the band as at its middle; the power of a muscle falls off towards the top.",
        View = GalleryView.Spectrum,
        Fault = new()
        {
            Name = "Dry contact that hisses, 15 µV, muscle at rest",
            Fault = ReasonCode.NoiseFloor,
            Plan = GallerySession.OfCheek(5701, [new BroadbandNoise([GallerySession.Cheek], SizeUv)]),
            Excerpts = Excerpts,
            ByEye = "Fine and dense, every sample on its own; the spectrum is level from end to end.",
        },
        Lookalikes =
        [
            new()
            {
                Name = "Tense muscle at rest, 15 µV",
                Fault = null,
                Plan = Tense(GallerySession.OfCheek(5702, [])),
                Excerpts = Excerpts,
                ByEye = "As strong, but the waves are wider; the spectrum is a hill that falls off to the right.",
            },
            new()
            {
                Name = "Answer of a muscle, 15 µV",
                Fault = null,
                Plan = GallerySession.OfCheek(5703, [], answerUv: SizeUv),
                Excerpts = Excerpts,
                ByEye = "The same hill; and it is gone when the photograph is.",
            },
        ],
    };

    private static SessionPlan Tense(SessionPlan plan) => plan with { Sites = [plan.Sites[0] with { RestUv = SizeUv }, .. plan.Sites[1..]] };
}
