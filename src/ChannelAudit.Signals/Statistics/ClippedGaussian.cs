namespace ChannelAudit.Signals.Statistics;

/// <summary>What a Gaussian loses of its mean magnitude when a share of it is cut off at a limit on both sides.</summary>
/// <remarks>
/// With P(|z| > k) = c for a standard normal z, E min(|z|, k) = E|z| - (2 phi(k) - k c), and E|z| = sqrt(2/pi): the loss is
/// (2 phi(k) - k c) / sqrt(2/pi). Cut on one side only, the same share loses more.
/// </remarks>
public static class ClippedGaussian
{
    private const double Far = 40;
    private const double SeriesTo = 3;

    /// <summary>The loss, from 0 to 1.</summary>
    /// <param name="share">The share that is cut off, from 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">When the share is outside.</exception>
    public static double RectifiedLoss(double share)
    {
        if (double.IsNaN(share) || share is < 0 or > 1)
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "a share goes from 0 to 1");
        }

        if (share == 0)
        {
            return 0;
        }

        double limit = LimitOf(share);
        double cut = (2 * Density(limit)) - (limit * share);
        return Math.Clamp(cut / Math.Sqrt(2 / Math.PI), 0, 1);
    }

    /// <summary>The limit beyond which a share of a standard normal lies, both sides together, by halving.</summary>
    public static double LimitOf(double share)
    {
        double low = 0;
        double high = Far;
        for (int i = 0; i < 100; i++)
        {
            double middle = 0.5 * (low + high);
            if (Beyond(middle) > share)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return 0.5 * (low + high);
    }

    /// <summary>P(|z| > limit): by the series of the integral below 3, by its continued fraction above (Abramowitz and Stegun 26.2.11, 26.2.14).</summary>
    private static double Beyond(double limit)
    {
        if (limit < SeriesTo)
        {
            double term = limit;
            double sum = limit;
            for (int n = 1; n < 100; n++)
            {
                term *= limit * limit / ((2 * n) + 1);
                sum += term;
            }

            return 1 - (2 * Density(limit) * sum);
        }

        double fraction = limit;
        for (int n = 100; n >= 1; n--)
        {
            fraction = limit + (n / fraction);
        }

        return 2 * Density(limit) / fraction;
    }

    private static double Density(double at) => Math.Exp(-0.5 * at * at) / Math.Sqrt(2 * Math.PI);
}
