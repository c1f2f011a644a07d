using System.Collections.Immutable;

namespace ChannelAudit.Views;

/// <summary>The mean density of a window to look at; no measure is made of it.</summary>
/// <param name="Density">One-sided, in squared unit per Hz, from 0 Hz on.</param>
/// <param name="BinHz">Width of a bin in Hz.</param>
/// <param name="Segments">Segments in the mean.</param>
/// <param name="LengthS">Length of a segment in seconds.</param>
/// <param name="IsFlat">Whether all samples of the window are one and the same: there is nothing to show then.</param>
public sealed record WindowSpectrum(ImmutableArray<double> Density, double BinHz, int Segments, double LengthS, bool IsFlat);
