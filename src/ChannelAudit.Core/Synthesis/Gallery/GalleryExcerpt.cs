namespace ChannelAudit.Synthesis.Gallery;

/// <summary>A part of a specimen's trace that is drawn.</summary>
/// <param name="FromS">Start in seconds from the first sample.</param>
/// <param name="ToS">End in seconds.</param>
/// <param name="Shows">What it shows, for a heading: <c>at rest</c>.</param>
public sealed record GalleryExcerpt(double FromS, double ToS, string Shows);
