using ChannelAudit.Synthesis;

namespace ChannelAudit.Tests.Synthesis;

/// <summary>Formulas written out once more, slowly and without the product's own kernels.</summary>
internal static class Plain
{
    internal static double[] Samples(MadeRecording made, string site)
    {
        ReadOnlySpan<int> codes = made.CodesOf(site);
        double[] samples = new double[codes.Length];
        for (int i = 0; i < codes.Length; i++)
        {
            samples[i] = codes[i] * made.Plan.Amplifier.StepUv;
        }

        return samples;
    }

    internal static double[] Samples(MadeRecording made, string site, decimal fromS, decimal toS) =>
        Samples(made, site)[(int)(fromS * (decimal)made.Plan.Rate.Value)..(int)(toS * (decimal)made.Plan.Rate.Value)];

    internal static double Mean(IReadOnlyCollection<double> x) => x.Sum() / x.Count;

    internal static double Rms(double[] x)
    {
        double mean = Mean(x);
        return Math.Sqrt(x.Sum(value => (value - mean) * (value - mean)) / x.Length);
    }

    internal static double Covariance(double[] x, double[] y)
    {
        double meanX = Mean(x);
        double meanY = Mean(y);
        return x.Zip(y, (a, b) => (a - meanX) * (b - meanY)).Sum() / x.Length;
    }

    internal static double Correlation(double[] x, double[] y) => Covariance(x, y) / (Rms(x) * Rms(y));

    /// <summary>rms of the sine that fits best at a frequency: projection on sine and cosine over whole periods.</summary>
    internal static double SineRms(double[] x, double hz, double rateHz)
    {
        double sine = 0;
        double cosine = 0;
        for (int i = 0; i < x.Length; i++)
        {
            double angle = 2 * Math.PI * hz * i / rateHz;
            sine += x[i] * Math.Sin(angle);
            cosine += x[i] * Math.Cos(angle);
        }

        return Math.Sqrt(2 * ((sine * sine) + (cosine * cosine))) / x.Length;
    }

    /// <summary>Mean density between two frequencies, by direct DFTs of 1 s pieces under a Hann window.</summary>
    internal static double Density(double[] x, int rateHz, int fromHz, int toHz) => CrossDensity(x, x, rateHz, fromHz, toHz);

    /// <summary>Mean real cross-density between two frequencies.</summary>
    internal static double CrossDensity(double[] x, double[] y, int rateHz, int fromHz, int toHz)
    {
        double sum = 0;
        int count = 0;
        (double Sin, double Cos)[] circle = [.. Enumerable.Range(0, rateHz).Select(i => Math.SinCos(2 * Math.PI * i / rateHz))];
        for (int start = 0; start + rateHz <= x.Length; start += rateHz)
        {
            for (int hz = fromHz; hz <= toHz; hz++)
            {
                (double re, double im) = Bin(x, start, hz, circle);
                (double re2, double im2) = ReferenceEquals(x, y) ? (re, im) : Bin(y, start, hz, circle);
                sum += (re * re2) + (im * im2);
                count++;
            }
        }

        return 2 * sum / count / rateHz / (rateHz * 0.375);
    }

    private static (double Re, double Im) Bin(double[] x, int start, int hz, (double Sin, double Cos)[] circle)
    {
        double re = 0;
        double im = 0;
        for (int i = 0; i < circle.Length; i++)
        {
            (double sin, double cos) = circle[hz * i % circle.Length];
            double weighted = x[start + i] * (0.5 - (0.5 * circle[i].Cos));
            re += weighted * cos;
            im -= weighted * sin;
        }

        return (re, im);
    }
}
