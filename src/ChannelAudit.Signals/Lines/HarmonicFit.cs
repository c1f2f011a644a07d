using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Signals.Arithmetic;
using ChannelAudit.Signals.Statistics;
using MathNet.Numerics.LinearAlgebra.Double;

namespace ChannelAudit.Signals.Lines;

/// <summary>Least-squares fit of sine waves of known frequencies, all at once, with a constant.</summary>
/// <remarks>
/// Solves the normal equations by Cholesky. That is accurate to about 1E-15 times their condition number, which is near 1
/// when the frequencies lie at least 1/T apart (T: duration), from 0 and from half the rate as well; nearer ones are the
/// caller's matter. White noise of variance σ² adds 2σ²/n to the mean of every power.
/// </remarks>
public static class HarmonicFit
{
    /// <summary>Pivot for each sample below which nothing but rounding is left of a wave (near 1/2 in good fits).</summary>
    private const double SmallestPivot = 1E-9;

    /// <summary>Fits the waves.</summary>
    /// <param name="samples">More samples than 2·frequencies + 1; left as they are.</param>
    /// <param name="rateHz">Sampling rate in hertz, positive.</param>
    /// <param name="frequenciesHz">At least one frequency, each above 0 and below half the rate, all different.</param>
    /// <returns>Coefficients, residual and its variance.</returns>
    /// <exception cref="ArgumentException">There are too few samples or no frequency, or the equations are singular.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is out of range.</exception>
    public static HarmonicFitResult Fit(ReadOnlySpan<double> samples, double rateHz, ReadOnlySpan<double> frequenciesHz)
    {
        Lengths.RequireAtLeast(frequenciesHz.Length, 1, nameof(frequenciesHz));
        Lengths.RequireAtLeast(samples.Length, (2 * frequenciesHz.Length) + 2, nameof(samples));
        var columns = Columns(samples.Length, rateHz, frequenciesHz);
        var mean = Moments.Mean(samples);
        var residual = samples.ToArray();
        Shift(residual, -mean);
        var coefficients = Solve(columns, residual);
        for (var column = 0; column < columns.Length; column++)
        {
            AddScaled(residual, columns[column], -coefficients[column]);
        }

        var harmonics = ImmutableArray.CreateBuilder<Harmonic>(frequenciesHz.Length);
        for (var i = 0; i < frequenciesHz.Length; i++)
        {
            harmonics.Add(new Harmonic(frequenciesHz[i], coefficients[(2 * i) + 1], coefficients[(2 * i) + 2]));
        }

        var variance = Dot(residual, residual) / (samples.Length - columns.Length);
        return new HarmonicFitResult(harmonics.MoveToImmutable(), mean + coefficients[0], residual, variance);
    }

    private static double[][] Columns(int length, double rateHz, ReadOnlySpan<double> frequenciesHz)
    {
        var columns = new double[(2 * frequenciesHz.Length) + 1][];
        columns[0] = new double[length];
        Array.Fill(columns[0], 1);
        for (var i = 0; i < frequenciesHz.Length; i++)
        {
            var frequency = frequenciesHz[i];
            ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(frequency, 0, nameof(frequenciesHz));
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(frequency, rateHz / 2, nameof(frequenciesHz));
            var (cosine, sine) = (new double[length], new double[length]);
            for (var n = 0; n < length; n++)
            {
                (sine[n], cosine[n]) = RepeatableMath.SinCosTurns(n * frequency / rateHz);
            }

            columns[(2 * i) + 1] = cosine;
            columns[(2 * i) + 2] = sine;
        }

        return columns;
    }

    private static double[] Solve(double[][] columns, double[] target)
    {
        var matrix = new DenseMatrix(columns.Length);
        var right = new DenseVector(columns.Length);
        for (var row = 0; row < columns.Length; row++)
        {
            right[row] = Dot(columns[row], target);
            for (var column = 0; column <= row; column++)
            {
                matrix[row, column] = matrix[column, row] = Dot(columns[row], columns[column]);
            }
        }

        try
        {
            var factor = matrix.Cholesky();
            var smallest = factor.Factor.Diagonal().Minimum();
            if (smallest * smallest > SmallestPivot * target.Length)
            {
                return factor.Solve(right).ToArray();
            }
        }
        catch (ArgumentException)
        {
            // Not positive definite: the same fault, seen earlier.
        }

        throw new ArgumentException(
            string.Create(
                CultureInfo.InvariantCulture,
                $"The {columns.Length / 2} frequencies cannot be told apart in {target.Length} samples."),
            nameof(target));
    }

    /// <summary>Sums products in four strands, joined in a fixed order.</summary>
    private static double Dot(double[] a, double[] b)
    {
        double s0 = 0, s1 = 0, s2 = 0, s3 = 0;
        var n = 0;
        for (; n + 4 <= a.Length; n += 4)
        {
            s0 += a[n] * b[n];
            s1 += a[n + 1] * b[n + 1];
            s2 += a[n + 2] * b[n + 2];
            s3 += a[n + 3] * b[n + 3];
        }

        for (; n < a.Length; n++)
        {
            s0 += a[n] * b[n];
        }

        return (s0 + s1) + (s2 + s3);
    }

    private static void Shift(double[] values, double by)
    {
        foreach (ref var value in values.AsSpan())
        {
            value += by;
        }
    }

    private static void AddScaled(double[] values, double[] column, double factor)
    {
        for (var n = 0; n < values.Length; n++)
        {
            values[n] += factor * column[n];
        }
    }
}
