using ChannelAudit.Signals.Lines;
using MathNet.Numerics.LinearAlgebra.Double;

namespace ChannelAudit.Signals.Tests.Lines;

public sealed class HarmonicFitTests
{
    /// <summary>The coefficients put in.</summary>
    [Fact]
    public void WavesPutInComeBack()
    {
        double[] samples = [.. Enumerable.Range(0, 700).Select(n => 12 + (3 * Cos(50.3, n)) - (4 * Sin(50.3, n)) + (0.5 * Sin(150.9, n)))];

        var fit = HarmonicFit.Fit(samples, 1000, [50.3, 150.9]);

        Near.Within(1E-11, 12, fit.Constant);
        Near.Within(1E-11, 3, fit.Harmonics[0].A);
        Near.Within(1E-11, -4, fit.Harmonics[0].B);
        Near.Within(1E-11, 12.5, fit.Harmonics[0].Power);
        Near.Within(1E-11, 0, fit.Harmonics[1].A);
        Near.Within(1E-11, 0.5, fit.Harmonics[1].B);
        Assert.All(fit.Residual, value => Near.Within(1E-11, 0, value));
    }

    /// <summary>MathNet.Numerics' QR on the same matrix, written out.</summary>
    [Fact]
    public void FitAgreesWithOrthogonalDecomposition()
    {
        var samples = NoiseOf.Seed(41, 350, 3);
        var matrix = DenseMatrix.Create(350, 5, (n, column) => column switch
        {
            0 => 1,
            1 => Cos(49.8, n),
            2 => Sin(49.8, n),
            3 => Cos(99.6, n),
            _ => Sin(99.6, n),
        });
        var wanted = matrix.QR().Solve(DenseVector.OfArray(samples));
        var residual = DenseVector.OfArray(samples) - (matrix * wanted);

        var fit = HarmonicFit.Fit(samples, 1000, [49.8, 99.6]);

        Near.All(
            [.. wanted], [fit.Constant, fit.Harmonics[0].A, fit.Harmonics[0].B, fit.Harmonics[1].A, fit.Harmonics[1].B], 1E-11);
        Near.One((residual * residual) / 345, fit.ResidualVariance, 1E-12);
    }

    /// <summary>Row 40: noise alone gives a mean power of 2σ²/N (by hand: two coefficients of variance 2σ²/N, half of
    /// their squares).</summary>
    [Theory]
    [InlineData(1, 0.018)]
    [InlineData(2, 0.009)]
    [InlineData(5, 0.0036)]
    public void NoiseAloneGivesItsBias(int seconds, double wanted)
    {
        const int Repeats = 2000;
        var noise = NoiseOf.Seed(40, Repeats * 200 * seconds, 3);
        var (power, variance) = (0.0, 0.0);
        for (var repeat = 0; repeat < Repeats; repeat++)
        {
            // A rate of 200 Hz keeps the test short; the bias for N samples is five times that for 1000 Hz.
            var fit = HarmonicFit.Fit(noise.AsSpan(repeat * 200 * seconds, 200 * seconds), 200, [50]);
            power += fit.Harmonics[0].Power / Repeats;
            variance += fit.ResidualVariance / Repeats;
        }

        Near.One(5 * wanted, power, 0.05);
        Near.One(9, variance, 0.02);
    }

    /// <summary>Row 41: fitted 0.05 Hz off over ten seconds, sinc²(0.5) = 4/π² of the power is found.</summary>
    [Fact]
    public void WrongFrequencyLosesPower()
    {
        double[] samples = [.. Enumerable.Range(0, 10_000).Select(n => 10 * Sin(50.05, n))];

        var fit = HarmonicFit.Fit(samples, 1000, [50]);

        Near.Within(0.5, 40.5, 100 * fit.Harmonics[0].Power / 50);
    }

    [Fact]
    public void MisuseIsRefused()
    {
        Assert.Throws<ArgumentException>(() => HarmonicFit.Fit(new double[100], 1000, []));
        Assert.Throws<ArgumentException>(() => HarmonicFit.Fit(new double[3], 1000, [50]));
        Assert.Throws<ArgumentOutOfRangeException>(() => HarmonicFit.Fit(new double[100], 1000, [0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => HarmonicFit.Fit(new double[100], 1000, [500]));
        Assert.Throws<ArgumentException>(() => HarmonicFit.Fit(new double[100], 1000, [50, 50]));
    }

    private static double Cos(double hertz, int n) => Math.Cos(2 * Math.PI * hertz * n / 1000);

    private static double Sin(double hertz, int n) => Math.Sin(2 * Math.PI * hertz * n / 1000);
}
