using System.Collections.Immutable;
using ChannelAudit.Excerpts;

namespace ChannelAudit.Reports.Bundles;

/// <summary>What a window needs to know of each channel of a recording.</summary>
/// <param name="Id">The recording's id.</param>
/// <param name="Channels">Its audited channels, in file order.</param>
public sealed record BundleRecording(string Id, ImmutableArray<ChannelFacts> Channels);
