using ChannelAudit.Findings;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>Mains beside another steady tone and beside a contraction.</summary>
internal static class LineNoiseSubject
{
    /// <summary>The entry.</summary>
    public static GallerySubject Make() => new()
    {
        Code = ReasonCode.LineNoise,
        Title = "Mains pickup",
        Telling = "Mains is regular, and its peaks stand at the mains frequency and its multiples; muscle is irregular, and its spectrum a broad hill.",
        View = GalleryView.Spectrum,
        Fault = new()
        {
            Name = "50 Hz mains of 15 µV over a resting muscle",
            Fault = ReasonCode.LineNoise,
            Plan = GallerySession.OfCheek(5001, [new MainsPickup([GallerySession.Cheek], 15)]),
            Excerpts = [new(14.5, 14.7, "muscle at rest")],
            ByEye = "Five equal waves in every tenth of a second; narrow peaks on the dots of the mains.",
        },
        Lookalikes =
        [
            new()
            {
                Name = "Display tone of 75 Hz, 15 µV, muscle at rest",
                Fault = ReasonCode.NarrowBand,
                Plan = GallerySession.OfCheek(5002, [new NarrowPeak([GallerySession.Cheek], 15, 75)]),
                Excerpts = [new(14.5, 14.7, "muscle at rest")],
                ByEye = "As regular as mains, but the waves are too close, and the one peak stands between the dots.",
            },
            new()
            {
                Name = "Strong contraction of 25 µV, no mains to speak of",
                Fault = null,
                Plan = GallerySession.OfCheek(5003, []),
                Trial = GallerySession.Task,
                Excerpts = [new(9.5, 9.7, "contraction")],
                ByEye = "No two waves are alike; a hill over the whole band, without a peak on it.",
            },
        ],
    };
}
