namespace ChannelAudit.Events;

/// <summary>Something that happened during a recording, from annotations, an events table or a trigger channel.</summary>
/// <param name="OnsetS">Seconds from the first stored sample.</param>
/// <param name="DurationS">Seconds; 0 for an instant, null when not stated.</param>
/// <param name="Label">The label, or null when there is none (<c>n/a</c>).</param>
public sealed record RecordedEvent(decimal OnsetS, decimal? DurationS, string? Label);
