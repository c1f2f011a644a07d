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
        for (int bin = frame.FirstBin; bin <= frame.LastBin; bin++)
        {
            sum += frame.IsLine[bin] ? 0 : density[bin];
        }

        double scale = (double)(frame.LastBin - frame.FirstBin + 1) / frame.OpenBins;
        return sum * frame.BinHz * scale;
    }
}
