namespace ChannelAudit.Measures;

/// <summary>Power below the EMG band: what moving leads and skin, and at the eye blinks, put under the muscle.</summary>
/// <remarks>From 2 Hz, because the bin at 1 Hz holds the leakage of the removed mean and of drift.</remarks>
public static class LowFrequency
{
    /// <summary>Lower edge in Hz.</summary>
    public const double FromHz = 2;

    /// <summary>Upper edge in Hz.</summary>
    public const double ToHz = 15;

    /// <summary>Upper edge in Hz of the part that even a mild high-pass empties.</summary>
    public const double LowestToHz = 4;

    /// <summary>Power from 2 to 15 Hz in unit².</summary>
    /// <param name="density">One-sided density, unit²/Hz, of <see cref="SpectralFrame.Bins"/> bins.</param>
    /// <param name="frame">The channel's frame.</param>
    public static double Power(ReadOnlySpan<double> density, SpectralFrame frame)
    {
        double sum = 0;
        for (int bin = frame.LowBins.From; bin <= frame.LowBins.To; bin++)
        {
            sum += density[bin];
        }

        return sum * frame.BinHz;
    }
}
