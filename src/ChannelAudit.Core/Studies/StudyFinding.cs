using System.Collections.Immutable;

namespace ChannelAudit.Studies;

/// <summary>Recordings that are other than the rest of the study. It changes no verdict.</summary>
/// <param name="Kind">One of <see cref="OddKind"/>.</param>
/// <param name="Recordings">Ids of the recordings it is about, in ordinal order.</param>
/// <param name="Channel">The channel, or null for the recordings as a whole.</param>
/// <param name="Text">What was seen, with its numbers.</param>
/// <param name="ToDo">What to do.</param>
public sealed record StudyFinding(string Kind, ImmutableArray<string> Recordings, string? Channel, string Text, string ToDo);
