using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Edf;

/// <summary>A time-stamped annotation list: one onset with one or more texts. An empty text at the start of a record says when it starts.</summary>
/// <param name="OnsetS">Seconds on the file's own clock.</param>
/// <param name="DurationS">Seconds, or null when none is stated.</param>
/// <param name="Texts">The texts, empty ones included.</param>
internal readonly record struct Tal(decimal OnsetS, decimal? DurationS, ImmutableArray<string> Texts);
