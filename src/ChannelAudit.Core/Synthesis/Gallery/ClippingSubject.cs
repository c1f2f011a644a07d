using ChannelAudit.Findings;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>Peaks cut off at the limit of the input, beside the same contraction with room and beside one that just fits.</summary>
internal static class ClippingSubject
{
    /// <summary>The entry.</summary>
    public static GallerySubject Make() => new()
    {
        Code = ReasonCode.Clipping,
        Title = "Peaks cut off at a rail",
        Telling = "A cut peak has a flat top, and all cut peaks have it at the same height; a peak that was recorded whole comes to a point.",
        View = GalleryView.Closeup,
        Fault = Specimen(
            "Contraction of 120 µV, input limits at ±200 µV", ReasonCode.Clipping, 120, 200, "Peaks end on the broken line, some of them for several samples."),
        Lookalikes =
        [
            Specimen(
                "The same contraction, input limits at ±3277 µV", null, 120, null, "The same moment with all its peaks: pointed, and each of its own height."),
            Specimen("Contraction of 45 µV, input limits at ±200 µV", null, 45, 200, "Some peaks come near the broken line, and none stops at it."),
        ],
    };

    // One seed: the same muscle does the same thing in front of three amplifiers.
    private static GallerySpecimen Specimen(string name, string? fault, double contractionUv, double? railUv, string byEye) => new()
    {
        Name = name,
        Fault = fault,
        Plan = GallerySession.OfCheek(5201, railUv is { } rail ? [new HeaderRail(GallerySession.Cheek, rail)] : [], contractionUv: contractionUv),
        Trial = GallerySession.Task,
        Excerpts = [new(9.0, 9.8, "contraction"), new(9.3, 9.34, "enlarged")],
        ByEye = byEye,
    };
}
