namespace ChannelAudit.Measures;

/// <summary>Power in the EMG band outside line windows, scaled up to the full bandwidth.</summary>
public static class BandAmplitude
{
    /// <summary>Band power in unit²; null when line windows leave nothing of the band.</summary>
    /// <param name="density">One-sided density, unit²/Hz, of <see cref="SpectralFrame.Bins"/> bins.</param>
    /// <param name="frame">The channel's frame.</param>
    /// <param name="passes">For every bin the share of power that a filter lets through; empty: no filter.</param>
    public static double? Power(ReadOnlySpan<double> density, SpectralFrame frame, ReadOnlySpan<double> passes = default)
    {
        if (frame.OpenBins == 0)
        {
            return null;
        }

        double sum = 0;
        foreach (BinRange range in frame.OpenRanges)
        {
            for (int bin = range.From; bin <= range.To; bin++)
            {
                sum += passes.IsEmpty ? density[bin] : density[bin] * passes[bin];
            }
        }

        double scale = (double)(frame.LastBin - frame.FirstBin + 1) / frame.OpenBins;
        return sum * frame.BinHz * scale;
    }
}
