using ChannelAudit.Findings;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>A signal that stands still, beside the quietest muscle there is and beside a site that gel has short-circuited.</summary>
internal static class FlatlineSubject
{
    /// <summary>The entry.</summary>
    public static GallerySubject Make() => new()
    {
        Code = ReasonCode.Flatline,
        Title = "No signal at all",
        Telling = "Enlarge it: a flat signal stays a straight line, however far; behind a quiet muscle the noise of electrodes and amplifier goes on.",
        View = GalleryView.Closeup,
        Fault = new()
        {
            Name = "Lead off for 2 s: the last value is held",
            Fault = ReasonCode.Flatline,
            Plan = GallerySession.OfCheek(5301, [new Flatline(GallerySession.Cheek) { Span = new FaultSpan(14.5M, 16.5M) }]),
            Excerpts = [new(14.2, 15.2, "muscle at rest"), new(14.4, 14.6, "enlarged")],
            ByEye = "From one sample to the next the line turns straight, and stays so.",
        },
        Lookalikes =
        [
            new()
            {
                Name = "A muscle fully at rest behind good contacts",
                Fault = null,
                Plan = Quiet(5302),
                Excerpts = [new(14.2, 15.2, "muscle at rest"), new(14.4, 14.6, "enlarged")],
                ByEye = "Almost nothing, but it goes on trembling.",
            },
            new()
            {
                Name = "Gel joins the two electrodes of the site, 0.1 kΩ",
                Fault = ReasonCode.WeakResponse,
                Plan = Quiet(5303) with { Faults = [ElectrodeBridge.WithinPair(GallerySession.Cheek, 0.1)] },
                Trial = GallerySession.Task,
                Excerpts = [new(9.2, 10.2, "contraction"), new(9.4, 9.6, "enlarged")],
                ByEye = "It trembles as a muscle at rest does, even while the participant contracts it.",
            },
        ],
    };

    private static SessionPlan Quiet(ulong seed)
    {
        SessionPlan plan = GallerySession.OfCheek(seed, []);
        return plan with { Sites = [plan.Sites[0] with { RestUv = 0.3, ElectrodeNoiseUv = 0.2 }, plan.Sites[1]] };
    }
}
