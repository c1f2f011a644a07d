using ChannelAudit.Findings;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>Leads that sway, beside a blink at the brow and beside a contact that settles.</summary>
internal static class LowFrequencySubject
{
    /// <summary>The entry.</summary>
    public static GallerySubject Make() => new()
    {
        Code = ReasonCode.LowFrequency,
        Title = "Motion of leads and skin",
        Telling = "Motion goes on and on, without a rhythm; a blink is one smooth bump that ends where it began.",
        View = GalleryView.Spectrum,
        Fault = new()
        {
            Name = "A lead that sways all the time, 100 µV",
            Fault = ReasonCode.LowFrequency,
            Plan = GallerySession.OfCheek(5601, [new Motion([GallerySession.Cheek], 100)], answerUv: 9),
            Excerpts = [new(13.5, 17.5, "during a photograph")],
            ByEye = "Slow waves of all lengths, as tall as they like, with the muscle as a fine fringe on them; left of the band, the spectrum climbs.",
        },
        Lookalikes =
        [
            new()
            {
                Name = "A blink seen at the brow, 180 µV",
                Fault = null,
                Site = GallerySession.Brow,
                Plan = GallerySession.OfCheek(5602, [new Blinks(GallerySession.Brow, 180, 6) { Span = new FaultSpan(12, 30) }], answerUv: 9),
                Excerpts = [new(13.5, 17.5, "during a photograph")],
                ByEye = "One bump of a quarter second, and the trace is level before and after it.",
            },
            new()
            {
                Name = "Fresh electrode that settles, 250 µV a minute",
                Fault = null,
                Plan = GallerySession.OfCheek(5603, [new Drift(GallerySession.Cheek, 250)], answerUv: 9),
                Excerpts = [new(13.5, 17.5, "during a photograph")],
                ByEye = "The whole trace climbs evenly; it does not come back, and nothing swings.",
            },
        ],
    };
}
