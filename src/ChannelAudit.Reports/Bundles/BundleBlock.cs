using System.Collections.Immutable;

namespace ChannelAudit.Reports.Bundles;

/// <summary>The samples of one channel around one trial: 64-bit floats, little end first, of all pieces one after another.</summary>
/// <param name="Path">The file inside the bundle.</param>
/// <param name="Recording">The recording's id.</param>
/// <param name="Channel">The channel's name.</param>
/// <param name="Trial">The trial's number.</param>
/// <param name="Pieces">Unbroken pieces: timeline index of the first sample, and how many.</param>
public sealed record BundleBlock(string Path, string Recording, string Channel, int Trial, ImmutableArray<(long Start, long Length)> Pieces);
