using System.Collections.Immutable;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>A whole recording at a glance.</summary>
/// <param name="Recording">Its id.</param>
/// <param name="DurationS">Its length in seconds.</param>
/// <param name="Channels">Its channels.</param>
public sealed record RibbonView(string Recording, double DurationS, ImmutableArray<RibbonChannel> Channels);
