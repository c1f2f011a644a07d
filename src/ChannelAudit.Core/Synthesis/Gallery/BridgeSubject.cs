using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>Two sites joined by gel, beside crosstalk and beside two muscles that contract together.</summary>
internal static class BridgeSubject
{
    private const string Cheek = GallerySession.Cheek;
    private const string Eye = GallerySession.Eye;

    /// <summary>The entry.</summary>
    public static GallerySubject Make() => new()
    {
        Code = ReasonCode.Bridge,
        Title = "Sites joined by gel",
        Telling = "Joined sites are alike at rest too, up to the highest frequencies; what a neighbour sends through tissue is smaller and smoother.",
        View = GalleryView.Pair,
        Fault = new()
        {
            Name = "Gel joins both electrodes of cheek and eye, 0.2 kΩ",
            Fault = ReasonCode.Bridge,
            Plan = GallerySession.OfCheekAndEye(5601, [ElectrodeBridge.TwoNodes(Cheek, Eye, 0.2)], (9, 0)),
            Partner = Eye,
            Trial = GallerySession.Task,
            Excerpts = OneAfterTheOther,
            ByEye = "Peak for peak the same in both, whichever of them contracts; every dot lies far right, at rest too.",
        },
        Lookalikes =
        [
            new()
            {
                Name = "Crosstalk: each sees a quarter of the other",
                Fault = null,
                Plan = GallerySession.OfCheekAndEye(5602, [Seen(Cheek, Eye), Seen(Eye, Cheek)], (9, 0)),
                Partner = Eye,
                Trial = GallerySession.Task,
                Excerpts = OneAfterTheOther,
                ByEye = "The one at rest shows a smaller, smoother copy; the dots fall back at rest, to nothing above 300 Hz.",
            },
            new()
            {
                Name = "Both muscles contract, each on its own",
                Fault = null,
                Plan = GallerySession.OfCheekAndEye(5603, [], (20, 20)),
                Partner = Eye,
                Trial = BothAnswer,
                Excerpts = [new(21, 21.1, "both contract"), new(9, 9.1, "cheek contracts")],
                ByEye = "Strong at the same time, but their peaks do not meet; when one contracts alone, the other rests.",
            },
        ],
    };

    // Both sites have a task, so the photographs come one later.
    private const int BothAnswer = 4;

    private static ImmutableArray<GalleryExcerpt> OneAfterTheOther => [new(9, 9.1, "cheek contracts"), new(15, 15.1, "eye contracts")];

    // As much as is published for the face, and sharper than most tissue leaves it: the hardest case.
    private static Crosstalk Seen(string from, string to) => new(from, to, 0.25) { TissueLowpassHz = 250 };
}
