using ChannelAudit.Results;

namespace ChannelAudit.Studies;

/// <summary>A channel as it is compared over a study.</summary>
/// <param name="Name">The site's name, or the label.</param>
/// <param name="RateHz">Samples per second.</param>
/// <param name="Signal">What was measured for that; null in results of older versions.</param>
internal sealed record StudyChannel(string Name, double RateHz, ChannelSignal? Signal);
