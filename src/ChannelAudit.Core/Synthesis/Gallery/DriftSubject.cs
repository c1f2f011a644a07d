using ChannelAudit.Findings;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>A baseline that runs away, beside a contact that settles and beside a lone movement.</summary>
internal static class DriftSubject
{
    /// <summary>The entry.</summary>
    public static GallerySubject Make() => new()
    {
        Code = ReasonCode.Drift,
        Title = "A baseline that wanders",
        Telling = "Drift goes on in one direction and leaves the muscle far behind; what settles is slow, and what moved once comes back.",
        View = GalleryView.Baseline,
        Fault = new()
        {
            Name = "Contact that never settles, 1200 µV a minute",
            Fault = ReasonCode.Drift,
            Plan = GallerySession.OfCheek(5501, [new Drift(GallerySession.Cheek, 1200)], answerUv: 9),
            ByEye = "The whole trace climbs, and does not stop.",
        },
        Lookalikes =
        [
            new()
            {
                Name = "Fresh electrode, still settling by 250 µV a minute",
                Fault = null,
                Plan = GallerySession.OfCheek(5502, [new Drift(GallerySession.Cheek, 250)], answerUv: 9),
                ByEye = "It climbs as well, but over a whole trial by less than the muscle moves it.",
            },
            new()
            {
                Name = "One pull at the lead between the trials",
                Fault = null,
                Plan = GallerySession.OfCheek(5503, [new Motion([GallerySession.Cheek], 150) { Span = new FaultSpan(21.3M, 22.7M) }], answerUv: 9),
                ByEye = "Wild swings for a second, and the baseline is where it was before.",
            },
        ],
    };
}
