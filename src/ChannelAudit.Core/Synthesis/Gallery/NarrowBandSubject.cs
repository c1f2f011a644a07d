using ChannelAudit.Findings;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>The tone of a display beside a harmonic of the mains close by, and beside a contraction.</summary>
internal static class NarrowBandSubject
{
    /// <summary>The entry.</summary>
    public static GallerySubject Make() => new()
    {
        Code = ReasonCode.NarrowBand,
        Title = "A steady tone that is not mains",
        Telling = "On the trace two steady tones look alike; in the spectrum the one stands on a dot of the mains and the other does not.",
        View = GalleryView.Spectrum,
        Fault = new()
        {
            Name = "Display tone of 144 Hz, 12 µV, muscle at rest",
            Fault = ReasonCode.NarrowBand,
            Plan = GallerySession.OfCheek(5101, [new NarrowPeak([GallerySession.Cheek], 12, 144)]),
            Excerpts = [new(14.5, 14.6, "muscle at rest")],
            ByEye = "A regular wave; the one narrow peak stands beside the dots, and a line with an N marks it.",
        },
        Lookalikes =
        [
            new()
            {
                Name = "Third harmonic of the mains alone, 150 Hz, 12 µV",
                Fault = ReasonCode.LineNoise,
                Plan = GallerySession.OfCheek(5102, [new MainsPickup([GallerySession.Cheek], 12) { Harmonics = [0, 0, 1] }]),
                Excerpts = [new(14.5, 14.6, "muscle at rest")],
                ByEye = "The same regular wave; the peak stands exactly on the third dot of the mains.",
            },
            new()
            {
                Name = "Contraction of 12 µV, nothing steady in it",
                Fault = null,
                Plan = GallerySession.OfCheek(5103, [], answerUv: 12),
                Excerpts = [new(14.5, 14.6, "contraction")],
                ByEye = "Waves of every length; the highest places of the hill are as broad as the hill is rough.",
            },
        ],
    };
}
