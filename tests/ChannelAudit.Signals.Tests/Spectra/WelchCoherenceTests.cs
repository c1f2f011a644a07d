using ChannelAudit.Signals.Spectra;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Signals.Tests.Spectra;

public sealed class WelchCoherenceTests
{
    /// <summary>Row 17: a = S + n1, b = S + n2 with variances 1, 1, 4: 1/2 · 1/5 (by hand), and the bias (1−γ²)²/L.</summary>
    [Fact]
    public void SharedPartGivesTheProductOfItsShares()
    {
        var shared = NoiseOf.Seed(170, 120_000);
        var n1 = NoiseOf.Seed(171, 120_000);
        var n2 = NoiseOf.Seed(172, 120_000, 2);
        double[] a = [.. shared.Zip(n1, (s, n) => s + n)];
        double[] b = [.. shared.Zip(n2, (s, n) => s + n)];

        var coherence = Welch.Coherence(a, b, 1000, 200);

        Near.Within(0.01, 0.1 + (0.81 / 1100), coherence[1..100].Average());
    }

    /// <summary>Row 18.</summary>
    [Fact]
    public void SignalIsCoherentWithItself()
    {
        var samples = NoiseOf.Seed(18, 5000);

        Assert.All(Welch.Coherence(samples, samples, 1000, 500), value => Near.Within(1E-12, 1, value));
    }

    /// <summary>Row 19: twenty segments without overlap; mean 1/L, 95 % point 1 − 0.05^(1/19) = 0.1459.</summary>
    [Fact]
    public void UnrelatedNoiseIsCoherentByChance()
    {
        var values = new List<double>();
        for (ulong seed = 0; seed < 20; seed++)
        {
            values.AddRange(WithoutOverlap(NoiseOf.Seed(1900 + seed, 4000), NoiseOf.Seed(2900 + seed, 4000), 200)[2..99]);
        }

        Near.Within(0.005, 0.05, values.Average());
        Near.Within(0.01, 0.1459, Quantiles.Type7InPlace(values.ToArray(), 0.95));
    }

    /// <summary>Row 20: 1 − α^(1/(L−1)), worked out by hand.</summary>
    [Theory]
    [InlineData(5, 0.5271, 0.6838)]
    [InlineData(10, 0.2831, 0.4005)]
    [InlineData(20, 0.1459, 0.2152)]
    [InlineData(59, 0.0503, 0.0763)]
    public void ChancePointsFollowTheFormula(double segments, double five, double one)
    {
        Near.Within(1E-4, five, Welch.CoherencePoint(0.05, segments));
        Near.Within(1E-4, one, Welch.CoherencePoint(0.01, segments));
    }

    /// <summary>Row 21: with one segment the coherence is 1 by definition, so it is refused.</summary>
    [Fact]
    public void OneSegmentIsRefused()
    {
        Assert.Throws<ArgumentException>(() => Welch.Coherence(new double[149], new double[149], 100, 100));
        Assert.Throws<ArgumentOutOfRangeException>(() => Welch.CoherencePoint(0.05, 1));
    }

    /// <summary>Row 22: zero-lag coherency of x with x + n is 1/√(1 + s²).</summary>
    [Theory]
    [InlineData(0.5, 0.8944)]
    [InlineData(1, 0.7071)]
    [InlineData(2, 0.4472)]
    public void AddedNoiseLowersTheCoherency(double size, double wanted)
    {
        var x = NoiseOf.Seed(220, 120_000);
        var n = NoiseOf.Seed(221, 120_000, size);

        Near.Within(0.01, wanted, Coherency(x, [.. x.Zip(n, (a, b) => a + b)], 30, 250, 0));
    }

    /// <summary>Row 23: a shared line fakes a correlation in the raw signals; without its bins nothing is left.</summary>
    [Fact]
    public void SharedLineVanishesWithItsBins()
    {
        double[] line = [.. Enumerable.Range(0, 60_000).Select(n => 10 * Math.Sqrt(2) * Math.Sin(2 * Math.PI * 50 * n / 1000))];
        double[] a = [.. NoiseOf.Seed(230, 60_000, 2.2).Zip(line, (x, y) => x + y)];
        double[] b = [.. NoiseOf.Seed(231, 60_000, 2.2).Zip(line, (x, y) => x + y)];

        Assert.True(MathNet.Numerics.Statistics.Correlation.Pearson(a, b) > 0.9);
        Assert.True(Coherency(a, b, 30, 250, 0) > 0.9);
        Assert.True(Math.Abs(Coherency(a, b, 30, 250, 2)) < 0.05);
    }

    /// <summary>Gives Σ Re Sab/√(ΣSaa·ΣSbb) over a band without the bins around multiples of 50 Hz.</summary>
    private static double Coherency(double[] a, double[] b, int from, int to, int guard)
    {
        var (re, _) = Welch.Cross(a, b, 1000, 1000);
        var (powerA, powerB) = (Welch.Density(a, 1000, 1000), Welch.Density(b, 1000, 1000));
        int[] bins = [.. Enumerable.Range(from, to - from).Where(bin => guard == 0 || Math.Abs(bin - (50 * Math.Round(bin / 50.0))) > guard)];
        return bins.Sum(bin => re[bin]) / Math.Sqrt(bins.Sum(bin => powerA[bin]) * bins.Sum(bin => powerB[bin]));
    }

    private static double[] WithoutOverlap(double[] a, double[] b, int length)
    {
        var batch = new SegmentBatch(1000, length, 2);
        var (powerA, powerB) = (new PowerAccumulator(batch.Bins), new PowerAccumulator(batch.Bins));
        var cross = new CrossAccumulator(0, batch.Bins);
        for (var start = 0; start < a.Length; start += 4 * length)
        {
            batch.Load(0, a.AsSpan(start), length, 4);
            batch.Load(1, b.AsSpan(start), length, 4);
            powerA.Add(batch, 0);
            powerB.Add(batch, 1);
            cross.Add(batch, 0, 1);
        }

        var (densityA, densityB) = (new double[batch.Bins], new double[batch.Bins]);
        var (re, im) = (new double[batch.Bins], new double[batch.Bins]);
        powerA.Density(batch, densityA);
        powerB.Density(batch, densityB);
        cross.Density(batch, re, im);
        return [.. Enumerable.Range(0, batch.Bins).Select(bin => ((re[bin] * re[bin]) + (im[bin] * im[bin])) / (densityA[bin] * densityB[bin]))];
    }
}
