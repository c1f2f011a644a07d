using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>All entries of the gallery.</summary>
public static class GallerySubjects
{
    /// <summary>The entries, in the order of <see cref="ReasonCode.All"/>.</summary>
    public static ImmutableArray<GallerySubject> All { get; } =
    [
        BridgeSubject.Make(),
        DropoutSubject.Make(),
        FlatlineSubject.Make(),
        ClippingSubject.Make(),
        LineNoiseSubject.Make(),
        NarrowBandSubject.Make(),
        LowFrequencySubject.Make(),
        PopsSubject.Make(),
        NoiseFloorSubject.Make(),
        DriftSubject.Make(),
        WeakResponseSubject.Make(),
        LeadSwapSubject.Make(),
    ];
}
