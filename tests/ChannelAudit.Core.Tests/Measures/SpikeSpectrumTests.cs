using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Where the energy of spikes lies whose spectra are known in closed form.</summary>
public sealed class SpikeSpectrumTests
{
    private const int Top = 200;
    private static readonly EmgBand Full = new(20, 450);

    // An impulse has the same power at every frequency: 26 of the 44 from 20 to 450 Hz lie from 50 to 300; of their squares 21940 of 31394 lie above.
    [Theory]
    [InlineData(1)]
    [InlineData(-40)]
    public void AnImpulseIsFlat(double height)
    {
        double[] y = new double[401];
        y[Top] = height;
        SpikeSpectrum spectrum = SpikeSpectrum.Of(y, Top, 1000, Full)!.Value;

        Assert.Equal(26 / 44.0, spectrum.MuscleShare, 12);
        Assert.Equal(21_940 / 31_394.0, spectrum.Steepness, 12);
        Assert.Equal(0, spectrum.Return);
        Assert.False(spectrum.HasPhases);
        Assert.False(spectrum.IsMuscleLike);
        Assert.False(spectrum.MayBeUnit);
    }

    // The band ends at 400 Hz: 26 of 39, and of the squares the sum from 31 to 40 of that from 2.
    [Fact]
    public void TheTopOfTheBandEndsIt()
    {
        double[] y = new double[401];
        y[Top] = 1;
        SpikeSpectrum spectrum = SpikeSpectrum.Of(y, Top, 1000, new EmgBand(20, 400))!.Value;

        Assert.Equal(26 / 39.0, spectrum.MuscleShare, 12);
        Assert.Equal((22_140 - 9_455) / 22_139.0, spectrum.Steepness, 12);
        Assert.Null(SpikeSpectrum.Of(y, Top, 1000, new EmgBand(20, 399)));
    }

    [Theory]
    [InlineData(150, 0.99, 1, 0, 0.02)]
    [InlineData(380, 0, 0.02, 0.98, 1)]
    public void AWaveHasItsEnergyAtItsFrequency(double hz, double leastMuscle, double mostMuscle, double leastSteep, double mostSteep)
    {
        double[] y = [.. Enumerable.Range(0, 401).Select(i => Math.Cos(2 * Math.PI * hz * (i - Top) / 1000))];
        SpikeSpectrum spectrum = SpikeSpectrum.Of(y, Top, 1000, Full)!.Value;

        Assert.InRange(spectrum.MuscleShare, leastMuscle, mostMuscle);
        Assert.InRange(spectrum.Steepness, leastSteep, mostSteep);
        Assert.InRange(spectrum.Return, 0.9, 1);
    }

    // At a distance of 6 ms it still comes with the spike, at 7 it does not.
    [Theory]
    [InlineData(6, -0.25, 0.25, true)]
    [InlineData(-6, -0.25, 0.25, true)]
    [InlineData(6, -0.24, 0.24, false)]
    [InlineData(7, -0.9, 0, false)]
    [InlineData(2, 0.9, 0, false)]
    public void TheOtherSignComesWithinSixMilliseconds(int distance, double height, double back, bool hasPhases)
    {
        foreach (double sign in new[] { 1.0, -1 })
        {
            double[] y = new double[401];
            (y[Top], y[Top + distance]) = (sign * 8, sign * 8 * height);
            SpikeSpectrum spectrum = SpikeSpectrum.Of(y, Top, 1000, Full)!.Value;

            Assert.Equal(back, spectrum.Return, 12);
            Assert.Equal(hasPhases, spectrum.HasPhases);
        }
    }

    // 12.5 ms at 1000 Hz are 12 samples (rounded to even).
    [Theory]
    [InlineData(12, true)]
    [InlineData(11, false)]
    [InlineData(388, true)]
    [InlineData(389, false)]
    public void NearTheEndsItIsNotKnown(int at, bool isKnown)
    {
        double[] y = new double[401];
        y[at] = 1;

        Assert.Equal(isKnown, SpikeSpectrum.Of(y, at, 1000, Full) is not null);
    }

    [Fact]
    public void NothingHasNoSpectrum() => Assert.Null(SpikeSpectrum.Of(new double[401], Top, 1000, Full));

    [Theory]
    [InlineData(0.85, 0.333, 0.25, true, true)]
    [InlineData(0.849, 0.333, 0.25, false, true)]
    [InlineData(0.85, 0.334, 0.25, false, true)]
    [InlineData(0.8, 0.4, 0.25, false, true)]
    [InlineData(0.799, 0.4, 0.25, false, false)]
    [InlineData(0.8, 0.401, 0.25, false, false)]
    [InlineData(1, 0, 0.249, false, false)]
    public void LimitsAreThoseOfThePage(double muscle, double steep, double back, bool isLike, bool mayBe)
    {
        SpikeSpectrum spectrum = new(muscle, steep, back);

        Assert.Equal((isLike, mayBe), (spectrum.IsMuscleLike, spectrum.MayBeUnit));
    }
}
