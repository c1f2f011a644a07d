using BenchmarkDotNet.Attributes;
using ChannelAudit.Signals.Random;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Benchmarks.Kernels;

/// <summary>Medians and slopes: what order statistics cost.</summary>
[MemoryDiagnoser]
public class Orders
{
    private const int Segments = 7200;

    private readonly double[] x = new double[Segments];
    private readonly double[] y = new double[Segments];
    private readonly double[] scratch = new double[Segments];

    /// <summary>Fills the points.</summary>
    public Orders()
    {
        Pcg32 random = new(1, 1);
        for (int i = 0; i < Segments; i++)
        {
            x[i] = i / 2.0;
            y[i] = random.NextDouble();
        }
    }

    /// <summary>The median of an hour's segments.</summary>
    [Benchmark]
    public double Median()
    {
        y.AsSpan().CopyTo(scratch);
        return Quantiles.MedianInPlace(scratch);
    }

    /// <summary>The slope through an hour's segments.</summary>
    [Benchmark]
    public double TheilSenSlope() => TheilSen.Fit(x, y).Slope;

    /// <summary>Least and greatest.</summary>
    [Benchmark]
    public (double Least, double Greatest) LeastAndGreatest() => Extremes.Of(y);
}
