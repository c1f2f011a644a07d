using ChannelAudit.Findings;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>Pops of a contact, beside a motor unit and beside the coupling of a stimulator.</summary>
internal static class PopsSubject
{
    /// <summary>The entry.</summary>
    public static GallerySubject Make() => new()
    {
        Code = ReasonCode.Pops,
        Title = "Pops of a loose contact",
        Telling = "Pops come at any time, up or down; a motor unit repeats one shape, and a stimulator comes equally late in every trial.",
        View = GalleryView.Closeup,
        Fault = new()
        {
            Name = "Plug that makes and breaks, four pops of 250 µV",
            Fault = ReasonCode.Pops,
            Plan = GallerySession.OfCheek(5801, [Pops(14.2M, 14.9M, 1), Pops(15.1M, 15.12M, 1), Pops(15.4M, 16.8M, 2)]),
            Excerpts = [new(13.5, 17.5, "during a photograph"), new(15.06, 15.16, "one of them")],
            ByEye = "Lone spikes, far above all else, at no interval; each is over in 2 ms.",
        },
        Lookalikes =
        [
            new()
            {
                Name = "One motor unit that fires, 60 µV",
                Fault = null,
                Plan = GallerySession.OfCheek(5802, [new MotorUnitTrain(GallerySession.Cheek, 60, 12) { Span = new FaultSpan(13.6M, 17.4M) }]),
                Excerpts = [new(13.5, 17.5, "during a photograph"), new(15, 15.2, "two or three of them")],
                ByEye = "As sharp, but a dozen a second at nearly even intervals, and each like the one before.",
            },
            new()
            {
                Name = "Stimulator that couples in, 250 µV",
                Fault = null,
                Plan = GallerySession.OfCheek(5803, [new StimulusSpikes(GallerySession.Cheek, 250, 0.5M)]),
                Excerpts = [new(13.5, 17.5, "during a photograph"), new(14.45, 14.55, "its spike")],
                ByEye = "Looks like a pop; but there is one in every trial, half a second after it begins.",
            },
        ],
    };

    private static ElectrodePops Pops(decimal fromS, decimal toS, int count) =>
        new(GallerySession.Cheek, 250, count) { Span = new FaultSpan(fromS, toS) };
}
