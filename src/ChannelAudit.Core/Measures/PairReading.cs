using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Measures;

/// <summary>What two channels share over some segments, from their mean cross-density and densities.</summary>
/// <param name="Rho">Zero-lag coherency over 30 to 250 Hz: Re S_AB / sqrt(S_AA S_BB), S summed first.</param>
/// <param name="RhoHigh">The same over 300 to 450 Hz; null without that band.</param>
/// <param name="Distance">Normalised electrical distance over 30 to 250 Hz: 1 - 2 |Re S_AB| / (S_AA + S_BB).</param>
/// <param name="Coherence">Median over bins of the magnitude-squared coherence over 30 to 250 Hz; null for a single segment, where it is 1 by definition.</param>
/// <param name="GainAb">Re S_AB / S_AA.</param>
/// <param name="GainBa">Re S_AB / S_BB.</param>
public readonly record struct PairReading(double Rho, double? RhoHigh, double Distance, double? Coherence, double GainAb, double GainBa)
{
    /// <summary>The reading; null when either channel holds nothing in the band.</summary>
    /// <param name="bands">The pair's bands.</param>
    /// <param name="re">Real part of the mean cross-density from <see cref="PairBands.FirstBin"/> on.</param>
    /// <param name="im">Imaginary part.</param>
    /// <param name="densityA">Mean density of the first channel, all bins.</param>
    /// <param name="densityB">Mean density of the second channel, all bins.</param>
    /// <param name="segments">Segments in the means.</param>
    public static PairReading? Of(
        PairBands bands,
        ReadOnlySpan<double> re,
        ReadOnlySpan<double> im,
        ReadOnlySpan<double> densityA,
        ReadOnlySpan<double> densityB,
        int segments)
    {
        double crossRe = 0;
        double powerA = 0;
        double powerB = 0;
        List<double> coherences = [];
        foreach (BinRange range in bands.Low)
        {
            for (int bin = range.From; bin <= range.To; bin++)
            {
                double real = re[bin - bands.FirstBin];
                double imaginary = im[bin - bands.FirstBin];
                crossRe += real;
                powerA += densityA[bin];
                powerB += densityB[bin];
                double product = densityA[bin] * densityB[bin];
                coherences.Add(product > 0 ? ((real * real) + (imaginary * imaginary)) / product : 0);
            }
        }

        if (!(powerA > 0) || !(powerB > 0))
        {
            return null;
        }

        return new PairReading(
            crossRe / Math.Sqrt(powerA * powerB),
            High(bands, re, densityA, densityB),
            1 - (2 * Math.Abs(crossRe) / (powerA + powerB)),
            segments > 1 ? Quantiles.MedianInPlace(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(coherences)) : null,
            crossRe / powerA,
            crossRe / powerB);
    }

    private static double? High(PairBands bands, ReadOnlySpan<double> re, ReadOnlySpan<double> densityA, ReadOnlySpan<double> densityB)
    {
        double cross = 0;
        double powerA = 0;
        double powerB = 0;
        foreach (BinRange range in bands.High)
        {
            for (int bin = range.From; bin <= range.To; bin++)
            {
                cross += re[bin - bands.FirstBin];
                powerA += densityA[bin];
                powerB += densityB[bin];
            }
        }

        return powerA > 0 && powerB > 0 ? cross / Math.Sqrt(powerA * powerB) : null;
    }
}
