namespace ChannelAudit.Recordings;

/// <summary>A text that a recording carries at a time.</summary>
/// <param name="OnsetS">Seconds from the first stored sample; may be negative or beyond the end.</param>
/// <param name="DurationS">Seconds, or null when none is stated.</param>
/// <param name="Text">The text: data, never markup.</param>
public sealed record Annotation(decimal OnsetS, decimal? DurationS, string Text);
