using ChannelAudit.Measures;
using ChannelAudit.Signals.Filters;
using ChannelAudit.Signals.Spectra;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Narrow peaks that are no mains.</summary>
public sealed class NarrowPeakTests
{
    private const double RateHz = 1000;

    [Theory]
    [InlineData(85)]
    [InlineData(85.3)]
    [InlineData(120.5)]
    [InlineData(377.77)]
    public void ATonesAmplitudeAndFrequencyAreFound(double hz)
    {
        double[] samples = Made.Sum(Made.Sine(7.5 * Math.Sqrt(2), hz, RateHz, 10_000), Made.Noise(31, 2, 10_000));

        PeakReading peak = NarrowPeak.Of(Welch.Density(samples, RateHz, 1000), Made.Frame(RateHz), 19);

        Assert.Equal(7.5, peak.Rms, 0.15);
        Assert.Equal(hz, peak.Hz, 0.25);
    }

    [Theory]
    [InlineData(50)]
    [InlineData(150)]
    [InlineData(400)]
    public void AHarmonicOfTheMainsIsNoNarrowPeak(double hz)
    {
        double[] samples = Made.Sum(Made.Sine(10, hz, RateHz, 10_000), Made.Noise(32, 2, 10_000));

        PeakReading peak = NarrowPeak.Of(Welch.Density(samples, RateHz, 1000), Made.Frame(RateHz), 19);

        Assert.True(peak.Rms < 0.5, FormattableString.Invariant($"{peak.Rms} µV at {peak.Hz} Hz"));
    }

    [Theory]
    [InlineData(103)]
    [InlineData(97)]
    [InlineData(153.5)]
    public void AToneBesideAHarmonicIsFoundAlsoWhereThatIsThere(double hz)
    {
        double[] mains = Made.Sum(Made.Sine(2, 100, RateHz, 10_000), Made.Sine(2, 150, RateHz, 10_000));
        double[] samples = Made.Sum(Made.Sine(7.5 * Math.Sqrt(2), hz, RateHz, 10_000), mains, Made.Noise(35, 2, 10_000));

        PeakReading peak = NarrowPeak.Of(Welch.Density(samples, RateHz, 1000), Made.Frame(RateHz), 19);

        Assert.Equal(7.5, peak.Rms, 0.4);
        Assert.Equal(hz, peak.Hz, 0.25);
    }

    [Fact]
    public void TheSidebandOfAStrongHarmonicIsNoTone()
    {
        // Mains of 10 µV whose amplitude trembles three times a second.
        double[] mains = Made.Sine(10, 150, RateHz, 10_000);
        double[] tremble = Made.Sine(0.3, 3, RateHz, 10_000);
        double[] samples = Made.Sum([.. mains.Select((value, i) => value * (1 + tremble[i]))], Made.Noise(36, 0.3, 10_000));

        PeakReading peak = NarrowPeak.Of(Welch.Density(samples, RateHz, 1000), Made.Frame(RateHz), 19);

        Assert.True(peak.Rms < 0.5, FormattableString.Invariant($"{peak.Rms} µV at {peak.Hz} Hz"));
    }

    [Theory]
    [InlineData(31, 4)]
    [InlineData(62, 8)]
    public void MotorUnitsFiringTogetherAreTooBroad(double hz, double halfWidthHz)
    {
        // Corrugator firing shows as broad peaks near 31 (± 4) and 62 (± 8) Hz (van Boxtel 2001): noise through a band of that width.
        double[] units = Made.Noise(33, 30, 40_000);
        Butterworth.HighPass(hz - halfWidthHz, RateHz).FilterInPlace(units);
        Butterworth.LowPass(hz + halfWidthHz, RateHz).FilterInPlace(units);
        double[] density = Welch.Density(Made.Sum(units, Made.Noise(34, 1, 40_000)), RateHz, 1000);

        PeakReading peak = NarrowPeak.Of(density, Made.Frame(RateHz, 60, 60), 79);

        double band = Math.Sqrt(units.Average(value => value * value));
        Assert.True(band > 3, "the peak must be strong for this to mean anything");
        Assert.True(peak.Rms < 0.3 * band, FormattableString.Invariant($"{peak.Rms} µV of {band} at {peak.Hz} Hz"));
    }
}
