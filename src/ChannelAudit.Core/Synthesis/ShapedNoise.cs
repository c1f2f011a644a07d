using System.Buffers;
using ChannelAudit.Signals.Filters;
using ChannelAudit.Signals.Random;

namespace ChannelAudit.Synthesis;

/// <summary>Gaussian noise with a given spectrum and a power of 1.</summary>
internal static class ShapedNoise
{
    /// <summary>Below this rate the noise is made faster and thinned out, so that its spectrum does not depend on the rate.</summary>
    private const double LowestInnerRateHz = 2000;

    /// <summary>Fills a buffer.</summary>
    /// <param name="random">Where the numbers come from.</param>
    /// <param name="band">The spectrum.</param>
    /// <param name="rateHz">Samples per second.</param>
    /// <param name="destination">Receives noise whose expected square is 1.</param>
    internal static void Fill(Pcg32 random, NoiseBand band, double rateHz, Span<double> destination)
    {
        int thinning = (int)Math.Max(1, Math.Ceiling(LowestInnerRateHz / rateHz));
        double innerHz = rateHz * thinning;
        int settling = band.LowHz > 0 ? (int)(2 * innerHz / band.LowHz) : (int)(innerHz / band.HighHz);
        int length = settling + (destination.Length * thinning);
        double[] buffer = ArrayPool<double>.Shared.Rent(length);
        try
        {
            Span<double> inner = buffer.AsSpan(0, length);
            double deviation = 1 / Math.Sqrt(PowerGain(band, innerHz));
            for (int i = 0; i < length; i++)
            {
                inner[i] = deviation * random.NextGaussian();
            }

            Shape(band, innerHz, inner);
            for (int i = 0; i < destination.Length; i++)
            {
                destination[i] = inner[settling + (i * thinning)];
            }
        }
        finally
        {
            ArrayPool<double>.Shared.Return(buffer);
        }
    }

    /// <summary>Sends a signal through the band's filters.</summary>
    internal static void Shape(NoiseBand band, double rateHz, Span<double> signal)
    {
        if (band.LowHz > 0)
        {
            Butterworth.HighPass(band.LowHz, rateHz).FilterInPlace(signal);
        }

        Butterworth.LowPass(band.HighHz, rateHz).FilterInPlace(signal);
    }

    /// <summary>Power behind the filters for white noise of power 1: the sum of the squared impulse response (Parseval).</summary>
    private static double PowerGain(NoiseBand band, double rateHz)
    {
        int length = (int)(8 * rateHz / (band.LowHz > 0 ? band.LowHz : band.HighHz));
        double[] response = new double[length];
        response[0] = 1;
        Shape(band, rateHz, response);
        double power = 0;
        foreach (double value in response)
        {
            power += value * value;
        }

        return power;
    }
}
