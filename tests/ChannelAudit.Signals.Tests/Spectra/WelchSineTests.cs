using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Signals.Tests.Spectra;

/// <summary>Sines of amplitude 10 in one segment of 1000 samples at 1000 Hz: densities that can be worked out by hand.</summary>
public sealed class WelchSineTests
{
    /// <summary>Row 1: A²/2 over the noise bandwidth of 1.5 bins of 1 Hz. Row 2: all of A²/2 in three bins.</summary>
    [Fact]
    public void SineOnABinHasItsPowerInThreeBins()
    {
        var density = Of(50);

        Near.One(100.0 / 3, density[50], 1E-9);
        Near.One(50, density[49] + density[50] + density[51], 1E-9);
    }

    /// <summary>Rows 3 and 4: from the Fourier transform of the Hann window, calculated with NumPy.</summary>
    [Theory]
    [InlineData(50.25, 50, 2, 49.9917)]
    [InlineData(50.5, 50, 1, 48.994)]
    [InlineData(50.5, 50, 2, 49.975)]
    [InlineData(50.5, 50, 3, 49.996)]
    public void SineBetweenBinsKeepsMostOfItsPower(double hertz, int centre, int reach, double wanted)
    {
        var density = Of(hertz);

        Near.Within(1.5E-3, wanted, density[(centre - reach)..(centre + reach + 1)].Sum());
    }

    private static double[] Of(double hertz) =>
        Welch.Density([.. Enumerable.Range(0, 1000).Select(n => 10 * Math.Sin(2 * Math.PI * hertz * n / 1000))], 1000, 1000);
}
