using System.Runtime.InteropServices;

namespace ChannelAudit.Signals.Statistics;

/// <summary>What a test by exchanging labels says.</summary>
/// <param name="Range">The largest of the labels' means less the smallest, in the unit of the values.</param>
/// <param name="P">Share of arrangements whose range is at least as large; 0 to 1, never 0.</param>
/// <param name="Arrangements">Arrangements looked at: all there are, or those drawn.</param>
/// <param name="IsExact">Whether they are all.</param>
/// <param name="SmallestP">The share of the arrangements with the largest range: no arrangement of these values has a smaller P. Where arrangements were
/// drawn, of those and the observed one.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PermutationResult(double Range, double P, int Arrangements, bool IsExact, double SmallestP);
