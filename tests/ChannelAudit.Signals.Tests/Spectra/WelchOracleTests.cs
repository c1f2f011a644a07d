using ChannelAudit.Signals.Spectra;
using ChannelAudit.Signals.Tests.Oracles;
using CsCheck;

namespace ChannelAudit.Signals.Tests.Spectra;

public sealed class WelchOracleTests
{
    /// <summary>SciPy's welch, csd and coherence.</summary>
    [Theory]
    [InlineData("even", 11, 5300, 1000, 500)]
    [InlineData("fraction", 12, 2600, 497.4, 497)]
    [InlineData("odd", 13, 1111, 250, 125)]
    [InlineData("power", 14, 1024, 1024, 256)]
    public void SpectraAgreeWithSciPy(string name, uint seed, int count, double rateHz, int segmentLength)
    {
        var (a, b) = OracleSignals.Pair(seed, count, rateHz);

        var density = Welch.Density(a, rateHz, segmentLength);
        var (re, im) = Welch.Cross(a, b, rateHz, segmentLength);
        var coherence = Welch.Coherence(a, b, rateHz, segmentLength);

        var table = OracleTable.Read("spectra");
        Near.All(table.Column(name, "welch"), density, 1E-9);
        Near.All(table.Column(name, "csd_re"), re, 1E-9);
        Near.All(table.Column(name, "csd_im"), im, 1E-9);
        Near.All(table.Column(name, "coherence"), coherence, 1E-9);
    }

    /// <summary>Law: the gain enters squared, and a constant not at all.</summary>
    [Fact]
    public void GainIsSquaredAndOffsetIsIgnored() =>
        Law.Holds(
            Gen.Select(Gen.Double[-30, 30], Gen.Double[-1000, 1000], Gen.Int[16, 90]),
            200,
            @case =>
            {
                var (gain, offset, segmentLength) = @case;
                var samples = NoiseOf.Seed(12, 400);
                double[] changed = [.. samples.Select(sample => (gain * sample) + offset)];
                double[] wanted = [.. Welch.Density(samples, 100, segmentLength).Select(value => gain * gain * value)];
                var allowed = 1E-9 * wanted.Max() + 1E-20;
                var found = Welch.Density(changed, 100, segmentLength);
                for (var bin = 0; bin < wanted.Length; bin++)
                {
                    Near.Within(allowed + (1E-9 * Math.Sqrt(wanted[bin])), wanted[bin], found[bin]);
                }
            });

    /// <summary>Law: whole periods of a shift do not change a periodic signal's density.</summary>
    [Fact]
    public void ShiftByAPeriodChangesNothing()
    {
        double[] samples = [.. Enumerable.Range(0, 1100).Select(n => Math.Sin(2 * Math.PI * n / 25) + Math.Cos(2 * Math.PI * n / 10))];

        Near.All(Welch.Density(samples.AsSpan(0, 1000), 100, 100), Welch.Density(samples.AsSpan(50, 1000), 100, 100), 1E-9);
    }

    [Theory]
    [InlineData(99, 100, 50, 0)]
    [InlineData(100, 100, 50, 1)]
    [InlineData(149, 100, 50, 1)]
    [InlineData(2000, 100, 50, 39)]
    [InlineData(60000, 1000, 500, 119)]
    [InlineData(30000, 1000, 500, 59)]
    public void SegmentsAreCountedWhole(long samples, int segmentLength, int hop, int wanted) =>
        Assert.Equal(wanted, Welch.SegmentCount(samples, segmentLength, hop));

    [Fact]
    public void TooShortSignalsAreRefused()
    {
        Assert.Throws<ArgumentException>(() => Welch.Density(new double[99], 100, 100));
        Assert.Throws<ArgumentException>(() => Welch.Cross(new double[200], new double[199], 100, 100));
    }
}
