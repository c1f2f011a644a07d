using System.Collections.Immutable;
using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>The mean spectrum of a window, and what its single segments hold.</summary>
/// <param name="Density">Mean density of its segments; empty when there is none.</param>
/// <param name="Segments">Segments in the mean.</param>
/// <param name="Powers">One entry a segment, in order; empty for the whole recording, whose segments have a table.</param>
public readonly record struct MeanSpectrum(double[] Density, int Segments, ImmutableArray<SegmentPower> Powers);
