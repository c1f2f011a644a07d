using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Signals.Tests.Spectra;

/// <summary>White noise of deviation 3 at 1000 Hz for a minute, one-second segments.</summary>
public sealed class WelchNoiseTests
{
    private const double Floor = 2 * 9 / 1000.0;

    /// <summary>Row 5: the sine's A²/2, after taking off the floor beside it.</summary>
    [Fact]
    public void SineInNoiseKeepsItsPower()
    {
        var samples = NoiseOf.Seed(5, 60_000, 3);
        for (var n = 0; n < samples.Length; n++)
        {
            samples[n] += 10 * Math.Sin(2 * Math.PI * 50 * n / 1000);
        }

        var density = Welch.Density(samples, 1000, 1000);

        Near.One(50, density[48..53].Sum() - (5 * Floor), 0.01);
    }

    /// <summary>Row 6: σ² spread evenly over half the rate (one-sided).</summary>
    [Fact]
    public void FloorIsTheVarianceOverHalfTheRate() =>
        Near.One(Floor, Welch.Density(NoiseOf.Seed(6, 60_000, 3), 1000, 1000)[2..499].Average(), 0.02);

    /// <summary>Row 7: interior bins stand for two frequencies, the last of an even length for one. The mean of many
    /// minutes' last bins is compared.</summary>
    [Fact]
    public void LastBinOfAnEvenLengthIsNotDoubled()
    {
        var (inside, last) = (0.0, 0.0);
        for (ulong seed = 0; seed < 10; seed++)
        {
            var density = Welch.Density(NoiseOf.Seed(700 + seed, 60_000, 3), 1000, 500);
            inside += density[100..200].Average();
            last += density[^1];
        }

        Near.One(2, inside / last, 0.10);
    }

    /// <summary>Row 7, odd length: the last bin is doubled as well (the one-sided rule).</summary>
    [Fact]
    public void LastBinOfAnOddLengthIsDoubled()
    {
        var (inside, last) = (0.0, 0.0);
        for (ulong seed = 0; seed < 10; seed++)
        {
            var density = Welch.Density(NoiseOf.Seed(700 + seed, 60_000, 3), 1000, 125);
            inside += density[10..50].Average();
            last += density[^1];
        }

        Near.One(1, inside / last, 0.10);
    }

    /// <summary>Row 8: with the mean of each segment removed, a third of σ²/fs is left at 0 Hz: E|Σw(x−x̄)|² =
    /// σ²(Σw² − (Σw)²/N) = σ²·N/8, over fs·3N/8 (by hand).</summary>
    [Fact]
    public void MeanRemovalLeavesAThirdAtZeroHertz()
    {
        var found = 0.0;
        for (ulong seed = 0; seed < 10; seed++)
        {
            found += Welch.Density(NoiseOf.Seed(800 + seed, 60_000, 3), 1000, 500)[0] / 10;
        }

        Near.One(1 / 3.0, found / (9 / 1000.0), 0.10);
    }

    /// <summary>Row 43: noise of deviation 1 has 0.86 of its power between 20 and 450 of 500 Hz.</summary>
    [Fact]
    public void BandHoldsItsShareOfThePower()
    {
        var density = Welch.Density(NoiseOf.Seed(43, 60_000), 1000, 1000);

        Near.One(Math.Sqrt(0.86), Math.Sqrt(density[20..450].Sum()), 0.01);
    }

    /// <summary>Median of χ² with 2L degrees of freedom over its mean, from MathNet.Numerics' gamma distribution
    /// (the approximation is 0.0016 off at L = 3 and better beyond).</summary>
    [Theory]
    [InlineData(3, 0.8914)]
    [InlineData(5, 0.9342)]
    [InlineData(19, 0.9825)]
    [InlineData(59, 0.9944)]
    public void MedianBiasIsTheMedianOfChiSquare(int segments, double printed)
    {
        var exact = MathNet.Numerics.Distributions.Gamma.InvCDF(segments, segments, 0.5);

        Near.Within(1E-4, printed, exact);
        Near.Within(2E-3, exact, Welch.MedianBias(segments));
    }

    /// <summary>Two counts of the convention, calculated by hand from its formula (Welch 1967).</summary>
    [Theory]
    [InlineData(1, 1, 1E-12)]
    [InlineData(39, 37.0, 0.05)]
    [InlineData(119, 112.8, 0.05)]
    public void OverlapMakesSegmentsWorthLess(int segments, double wanted, double tolerance) =>
        Near.Within(tolerance, wanted, Welch.EffectiveSegments(segments));
}
