using ChannelAudit.Signals.Random;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Signals.Tests.Random;

public sealed class Pcg32Tests
{
    /// <summary>Output of the reference program pcg32-demo by O'Neill (2014), first round, from memory.</summary>
    [Fact]
    public void ReferenceSequenceComesBack()
    {
        var random = new Pcg32(42, 54);

        uint[] found = [random.Next(), random.Next(), random.Next(), random.Next(), random.Next(), random.Next()];

        Assert.Equal([0xa15c02b7, 0x7b47f409, 0xba1d3330, 0x83d2f293, 0xbfa4784b, 0xcbed606e], found);
    }

    [Fact]
    public void StreamsDiffer() => Assert.NotEqual(new Pcg32(7, 1).Next(), new Pcg32(7, 2).Next());

    /// <summary>Moments of the uniform distribution: mean 1/2, variance 1/12 (textbook).</summary>
    [Fact]
    public void UnitIntervalIsFilledEvenly()
    {
        var random = new Pcg32(3);
        var values = new double[100_000];
        foreach (ref var value in values.AsSpan())
        {
            value = random.NextDouble();
        }

        Assert.All(values, value => Assert.InRange(value, 0, 1 - 1E-17));
        Near.Within(0.005, 0.5, Moments.Mean(values));
        Near.One(Math.Sqrt(1.0 / 12), Moments.StandardDeviation(values), 0.01);
        Near.Within(0.01, 0, Moments.LagOneCorrelation(values));
    }

    /// <summary>Normal quantiles: Φ(−1.959964) = 0.025 and so on (textbook).</summary>
    [Theory]
    [InlineData(0.025, -1.959964)]
    [InlineData(0.5, 0)]
    [InlineData(0.75, 0.674490)]
    [InlineData(0.995, 2.575829)]
    public void NormalQuantilesComeBack(double probability, double wanted)
    {
        var values = NoiseOf.Seed(4, 400_000);

        Near.Within(0.02, wanted, Quantiles.Type7InPlace(values, probability));
    }

    /// <summary>Row 42: chance that noise quantised in steps of one standard deviation repeats its value, Σ p², 0.2709. Runs of at
    /// least k zeros are expected n·(1 − p)·p^k times with p = 0.383: 17 of eight or more, 0.02 of fifteen or more.</summary>
    [Fact]
    public void QuantisedNoiseRepeatsItselfAsOftenAsTheoryHasIt()
    {
        double[] codes = [.. NoiseOf.Seed(42, 60_000).Select(value => Math.Round(value))];
        var (repeats, run, longest) = (0, 1, 1);
        for (var n = 1; n < codes.Length; n++)
        {
            repeats += codes[n] == codes[n - 1] ? 1 : 0;
            run = codes[n] == codes[n - 1] ? run + 1 : 1;
            longest = Math.Max(longest, run);
        }

        Near.Within(0.006, 0.2709, repeats / (codes.Length - 1.0));
        Assert.InRange(longest, 8, 14);
    }

    /// <summary>Row 44: E min(x², c²) at the 1 % two-sided point c = 2.5758 (closed form, worked by hand).</summary>
    [Fact]
    public void ClippingOnePercentOfNormalNoiseCostsNinePerMille()
    {
        var values = NoiseOf.Seed(44, 1_000_000);
        double[] clipped = [.. values.Select(value => Math.Clamp(value, -2.5758293, 2.5758293))];

        Near.Within(0.02, -0.911, 100 * ((Moments.Rms(clipped) / Moments.Rms(values)) - 1));
    }
}
