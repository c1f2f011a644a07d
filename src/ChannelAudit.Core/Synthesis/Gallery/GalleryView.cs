namespace ChannelAudit.Synthesis.Gallery;

/// <summary>What is drawn of each specimen of a subject: the view that tells it from what resembles it.</summary>
public enum GalleryView
{
    /// <summary>An excerpt of the trace, and the spectrum.</summary>
    Spectrum,

    /// <summary>An excerpt of the trace, and a part of it enlarged until single samples can be seen.</summary>
    Closeup,

    /// <summary>The whole trace, and its baseline.</summary>
    Baseline,

    /// <summary>Two sites one above the other, in two excerpts, and their correlation by state.</summary>
    Pair,
}
