using System.Collections.Immutable;

namespace ChannelAudit.Detectability;

/// <summary>One audit of the study.</summary>
/// <param name="Kind">Position of the fault.</param>
/// <param name="Size">Position of its size.</param>
/// <param name="Round">Number of the round.</param>
/// <param name="Places">Where the fault is planted.</param>
internal sealed record PlantJob(int Kind, int Size, int Round, ImmutableArray<PlantPlace> Places);
