using ChannelAudit.Measures;
using ChannelAudit.Signals.Spectra;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>What two channels share, on mixtures whose correlation and coherence follow from their variances.</summary>
public sealed class PairReadingTests
{
    private const double RateHz = 1000;
    private const int Minute = 60_000;

    [Fact]
    public void AChannelSharesEverythingWithItself()
    {
        double[] noise = Made.Noise(71, 5, Minute);

        PairReading pair = Of(noise, noise);

        Assert.Equal(1, pair.Rho, 1e-12);
        Assert.Equal(1, pair.RhoHigh!.Value, 1e-12);
        Assert.Equal(0, pair.Distance, 1e-12);
        Assert.Equal(1, pair.Coherence!.Value, 1e-12);
        Assert.Equal(1, pair.GainAb, 1e-12);
    }

    [Fact]
    public void CoherenceIsTheProductOfTheSharesOfThePower()
    {
        double[] shared = Made.Noise(72, 1, 10 * Minute);
        PairReading pair = Of(Made.Sum(shared, Made.Noise(73, 1, 10 * Minute)), Made.Sum(shared, Made.Noise(74, 2, 10 * Minute)));

        // 1/2 x 1/5.
        Assert.Equal(0.100, pair.Coherence!.Value, 0.01);
        Assert.Equal(Math.Sqrt(0.1), pair.Rho, 0.01);
    }

    [Theory]
    [InlineData(0.5, 0.8944)]
    [InlineData(1, 0.7071)]
    [InlineData(2, 0.4472)]
    public void NoiseOnACopyLowersTheCorrelation(double noise, double expected)
    {
        double[] signal = Made.Noise(75, 1, 4 * Minute);
        double[] copy = Made.Sum(signal, Made.Noise(76, noise, 4 * Minute));

        PairReading pair = Of(signal, copy);

        // 1 / sqrt(1 + s²).
        Assert.Equal(expected, pair.Rho, 0.01);
        Assert.Equal(1, pair.GainAb, 0.01);
        Assert.Equal(1 / (1 + (noise * noise)), pair.GainBa, 0.01);
    }

    [Fact]
    public void SharedMainsMakeTheRawCorrelationButNotOurs()
    {
        double[] line = Made.Sine(10 * Math.Sqrt(2), 50, RateHz, Minute);
        double[] a = Made.Sum(line, Made.Noise(77, 2.2, Minute));
        double[] b = Made.Sum(line, Made.Noise(78, 2.2, Minute));

        double raw = a.Zip(b, (x, y) => x * y).Sum() / Math.Sqrt(a.Sum(x => x * x) * b.Sum(y => y * y));

        Assert.True(raw > 0.9);
        Assert.True(Math.Abs(Of(a, b).Rho) < 0.05);
    }

    [Fact]
    public void TheDistanceIsTheLesserPowerOfSumAndDifference()
    {
        double[] a = Made.Noise(79, 3, Minute);
        double[] b = Made.Sum([.. a.Select(value => -0.5 * value)], Made.Noise(80, 1, Minute));
        SpectralFrame frame = Made.Frame(RateHz);
        double Power(double[] samples)
        {
            double[] density = Welch.Density(samples, RateHz, 1000);
            return PairBands.Of(frame, frame).Low.Sum(range => Enumerable.Range(range.From, range.Count).Sum(bin => density[bin]));
        }

        double plus = Power([.. a.Zip(b, (x, y) => x + y)]);
        double minus = Power([.. a.Zip(b, (x, y) => x - y)]);

        Assert.Equal(Math.Min(plus, minus) / (Power(a) + Power(b)), Of(a, b).Distance, 1e-9);
    }

    [Fact]
    public void OneSegmentHasNoCoherence()
    {
        Assert.Null(Of(Made.Noise(81, 1, 1000), Made.Noise(82, 1, 1000)).Coherence);
    }

    [Fact]
    public void WithoutTheHighBandThereIsNoHighCorrelation()
    {
        double[] a = Made.Noise(83, 1, 3000);
        SpectralFrame frame = Made.Frame(RateHz, lowpassHz: 400);
        PairBands bands = PairBands.Of(frame, frame);

        Assert.False(bands.HasHigh);
        Assert.Null(Of(a, a, frame).RhoHigh);
    }

    [Fact]
    public void ADelayIsNoZeroLagCorrelation()
    {
        double[] noise = Made.Noise(84, 1, Minute + 50);

        // A delay of 25 ms turns the phase through a full circle every 40 Hz: the real parts cancel over 30 to 250 Hz.
        Assert.True(Math.Abs(Of(noise[25..(Minute + 25)], noise[..Minute]).Rho) < 0.1);
    }

    private static PairReading Of(double[] a, double[] b, SpectralFrame? frame = null)
    {
        SpectralFrame used = frame ?? Made.Frame(RateHz);
        PairBands bands = PairBands.Of(used, used);
        (double[] re, double[] im) = Welch.Cross(a, b, RateHz, 1000);
        return PairReading.Of(
            bands,
            re.AsSpan(bands.FirstBin, bands.BinCount),
            im.AsSpan(bands.FirstBin, bands.BinCount),
            Welch.Density(a, RateHz, 1000),
            Welch.Density(b, RateHz, 1000),
            Welch.SegmentCount(a.Length, 1000, 500))!.Value;
    }
}
