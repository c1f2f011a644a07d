using System.Collections.Immutable;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>One made recording of the gallery: a fault, or something that resembles it.</summary>
public sealed record GallerySpecimen
{
    /// <summary>What was made, with its size.</summary>
    public required string Name { get; init; }

    /// <summary>The reason code of what is wrong with it, or null when nothing is.</summary>
    public required string? Fault { get; init; }

    /// <summary>How it is made.</summary>
    public required SessionPlan Plan { get; init; }

    /// <summary>The site that is shown.</summary>
    public string Site { get; init; } = GallerySession.Cheek;

    /// <summary>The other site of a pair, or null.</summary>
    public string? Partner { get; init; }

    /// <summary>The number of the trial whose verdict is shown, from 1.</summary>
    public int Trial { get; init; } = GallerySession.Scored;

    /// <summary>What is drawn of the trace: as many excerpts as the subject's view asks for.</summary>
    public ImmutableArray<GalleryExcerpt> Excerpts { get; init; } = [];

    /// <summary>How the eye knows it, in one sentence.</summary>
    public required string ByEye { get; init; }
}
