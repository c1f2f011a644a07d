namespace ChannelAudit.Measures;

/// <summary>Power in the EMG band outside line windows, scaled up to the full bandwidth.</summary>
public static class BandAmplitude
{
    /// <summary>Band power in unit²; null when line windows leave nothing of the band.</summary>
    public static double? Power(ReadOnlySpan<double> density, SpectralFrame frame)
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
                sum += density[bin];
            }
        }

        double scale = (double)(frame.LastBin - frame.FirstBin + 1) / frame.OpenBins;
        return sum * frame.BinHz * scale;
    }
}
