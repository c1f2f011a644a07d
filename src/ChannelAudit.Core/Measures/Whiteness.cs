using System.Collections.Immutable;

namespace ChannelAudit.Measures;

/// <summary>How flat the spectrum of the band is: 1 for noise, far below 1 for muscle.</summary>
/// <remarks>
/// The mean density of the top fifth of the band over that of 80 to 150 Hz, line windows left out. The top fifth and not a fixed range, or the
/// noise of an amplifier with a low-pass of 400 Hz would look like muscle.
/// </remarks>
public static class Whiteness
{
    /// <summary>Where the top of the band starts, as a share of its upper edge.</summary>
    public const double TopShare = 0.8;

    /// <summary>Lower edge of the muscle's own range in Hz.</summary>
    public const double MiddleFromHz = 80;

    /// <summary>Upper edge of the muscle's own range in Hz.</summary>
    public const double MiddleToHz = 150;

    /// <summary>Below this upper edge of the band noise and muscle cannot be told apart.</summary>
    public const double LeastTopHz = 300;

    /// <summary>Whiteness of a mean density; null where the band is too narrow or holds nothing.</summary>
    /// <param name="density">One-sided density, unit²/Hz, of <see cref="SpectralFrame.Bins"/> bins.</param>
    /// <param name="frame">The channel's frame.</param>
    public static double? Of(ReadOnlySpan<double> density, SpectralFrame frame) =>
        Of(Mean(density, frame.TopRanges), Mean(density, frame.MiddleRanges), frame.Band);

    /// <summary>Whiteness from the two mean densities.</summary>
    public static double? Of(double top, double middle, EmgBand band) => band.ToHz >= LeastTopHz && middle > 0 ? top / middle : null;

    /// <summary>The power that noise of this density at the top of the band has over the whole band, unit².</summary>
    public static double NoisePower(double top, EmgBand band) => top * (band.ToHz - band.FromHz);

    /// <summary>The mean of some bins; 0 when there are none.</summary>
    public static double Mean(ReadOnlySpan<double> density, ImmutableArray<BinRange> ranges)
    {
        double sum = 0;
        int count = 0;
        foreach (BinRange range in ranges)
        {
            for (int bin = range.From; bin <= range.To; bin++)
            {
                sum += density[bin];
            }

            count += range.Count;
        }

        return count == 0 ? 0 : sum / count;
    }
}
