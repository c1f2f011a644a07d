using System.Collections.Immutable;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>An entry of the gallery: a fault beside what resembles it. One entry, one file; <see cref="GallerySubjects"/> lists them.</summary>
public sealed record GallerySubject
{
    /// <summary>The reason code.</summary>
    public required string Code { get; init; }

    /// <summary>The fault in a few words.</summary>
    public required string Title { get; init; }

    /// <summary>What tells the fault from what resembles it, in one sentence.</summary>
    public required string Telling { get; init; }

    /// <summary>What is drawn of each specimen.</summary>
    public required GalleryView View { get; init; }

    /// <summary>The fault.</summary>
    public required GallerySpecimen Fault { get; init; }

    /// <summary>What resembles it, one or two.</summary>
    public required ImmutableArray<GallerySpecimen> Lookalikes { get; init; }

    /// <summary>The fault, then what resembles it.</summary>
    public ImmutableArray<GallerySpecimen> Specimens => [Fault, .. Lookalikes];
}
