using System.Collections.Immutable;

namespace ChannelAudit.Runs;

/// <summary>What was found at the paths of a run.</summary>
/// <param name="Entries">The recordings by id, in ordinal order.</param>
/// <param name="PassedOver">Text files of searched folders that do not look like samples, as paths below their root.</param>
public sealed record FoundRecordings(ImmutableArray<RecordingEntry> Entries, ImmutableArray<string> PassedOver);
