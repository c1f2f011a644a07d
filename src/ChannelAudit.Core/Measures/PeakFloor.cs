using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Measures;

/// <summary>The level of the spectrum around a narrow peak: the median of the bins 3 to 10 away, corrected for its bias.</summary>
/// <remarks>The median over bins lies below the mean: it is divided by (1 - 1/(9 L))^3, L the effective number of segments.</remarks>
internal static class PeakFloor
{
    /// <summary>The nearest bin that counts.</summary>
    public const int Near = LineWindow.Reach + 1;

    /// <summary>The farthest bin that counts.</summary>
    public const int Far = 10;

    /// <summary>Variance factor of a sum over neighbouring Hann bins, which are correlated.</summary>
    public const double HannCorrelation = 1.5;

    /// <summary>The floor in the unit of the density; 0 when no bin is near enough.</summary>
    public static double At(ReadOnlySpan<double> density, int center, double medianBias)
    {
        Span<double> around = stackalloc double[2 * (Far - Near + 1)];
        int count = 0;
        for (int offset = Near; offset <= Far; offset++)
        {
            count = Insert(around, count, density, center - offset);
            count = Insert(around, count, density, center + offset);
        }

        if (count == 0)
        {
            return 0;
        }

        double median = (count & 1) == 1 ? around[count / 2] : 0.5 * (around[(count / 2) - 1] + around[count / 2]);
        return median / medianBias;
    }

    /// <summary>The bias of the median over bins for a number of overlapping segments.</summary>
    public static double MedianBias(int segments) => Welch.MedianBias(Welch.EffectiveSegments(segments));

    private static int Insert(Span<double> sorted, int count, ReadOnlySpan<double> density, int bin)
    {
        // Bin 0 holds what is left of the mean, never noise.
        if (bin < 1 || bin >= density.Length)
        {
            return count;
        }

        double value = density[bin];
        int at = count;
        while (at > 0 && sorted[at - 1] > value)
        {
            sorted[at] = sorted[at - 1];
            at--;
        }

        sorted[at] = value;
        return count + 1;
    }
}
