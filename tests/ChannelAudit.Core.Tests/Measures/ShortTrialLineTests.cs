using ChannelAudit.Measures;
using ChannelAudit.Signals.Lines;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Line noise of trials below one second, by least squares.</summary>
public sealed class ShortTrialLineTests
{
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.5)]
    [InlineData(0.999)]
    public void ASineAloneIsMeasuredExactly(double seconds)
    {
        (PeakReading line, double emg, _) = ShortTrialLine.Of(Made.Sine(10, 50, 1000, (int)(seconds * 1000), 0.3), Made.Frame(1000));

        Assert.Equal(50, line.Power, 1e-6);
        Assert.Equal(0, emg, 1e-6);
    }

    // At the corner half of the power passes, a notch takes a harmonic whole; an odd number of samples at an odd rate is as good as any.
    [Fact]
    public void TheFilterLeavesItsShareOfEachHarmonic()
    {
        SpectralFrame frame = SpectralFrame.Of(Made.Channel(1000.4), 50, 50, [], ScoringFilter.Of(new Setup.ScoringSetup { HighpassHz = 150, NotchesHz = [250] }));
        double[] samples = Made.Sum(Made.Sine(2, 150, 1000.4, 501), Made.Sine(3, 250, 1000.4, 501), Made.Sine(4, 400, 1000.4, 501));
        (PeakReading line, _, Surviving left) = ShortTrialLine.Of(samples, frame);

        Assert.Equal(2 + 4.5 + 8, line.Power, 1e-6);
        Assert.Equal(1 + (8 * frame.Filter.PowerAt(400, 1000.4)), left.Line.Power, 1e-6);
        Assert.Equal((50, 50), (line.Hz, left.Line.Hz));
    }

    // 2 sigma²/N at each of eight harmonics, of which a high-pass leaves little at the first and a notch nothing at the second.
    [Fact]
    public void TheErrorIsThatOfTheNoiseAtEachHarmonic()
    {
        ScoringFilter filter = ScoringFilter.Of(new Setup.ScoringSetup { HighpassHz = 200, NotchesHz = [100] });
        SpectralFrame frame = SpectralFrame.Of(Made.Channel(1000), 50, 50, [], filter);
        (double error, double errorLeft, double emg, double emgLeft) = (0, 0, 0, 0);
        for (ulong seed = 0; seed < 200; seed++)
        {
            (PeakReading line, double muscle, Surviving left) = ShortTrialLine.Of(Made.Noise(30_000 + seed, 3, 500), frame);
            error += line.StandardError / 200;
            errorLeft += left.Line.StandardError / 200;
            emg += muscle / 200;
            emgLeft += left.EmgPower!.Value / 200;
        }

        double expected = Math.Sqrt(Enumerable.Range(1, 8).Where(harmonic => harmonic != 2).Sum(harmonic => Math.Pow(filter.PowerAt(50 * harmonic, 1000), 2)) / 8);
        double passed = Enumerable.Range(20, 431).Average(hz => filter.PowerAt(hz, 1000));

        Assert.Equal(0.036 * Math.Sqrt(8), error, 0.015);
        Assert.Equal(expected, errorLeft / error, 0.02);
        Assert.Equal(passed, emgLeft / emg, 0.01);
    }

    [Fact]
    public void TheNoiseBiasIsTakenOff()
    {
        const int trials = 400;
        double mean = 0;
        for (ulong seed = 0; seed < trials; seed++)
        {
            double[] samples = Made.Sum(Made.Sine(Math.Sqrt(2), 50, 1000, 500), Made.Noise(900 + seed, 3, 500));
            SpectralFrame frame = Made.Frame(1000, lowpassHz: 100);
            (PeakReading line, _, Surviving left) = ShortTrialLine.Of(samples, frame);
            mean += line.Power / trials;
            Assert.Equal(line.Power * frame.Filter.PowerAt(50, 1000), left.Line.Power, 12);
        }

        // The line is 1 µV². Each fit of a sine and a cosine to noise finds 2 sigma²/N = 0.036 µV² that is not there (analytic).
        Assert.Equal(1, mean, 0.05);
    }

    [Theory]
    [InlineData(1, 0.018)]
    [InlineData(2, 0.009)]
    [InlineData(5, 0.0036)]
    public void AFitToNoiseFindsTwiceItsPowerOverTheSamples(int seconds, double expected)
    {
        const int trials = 3000;
        double mean = 0;
        for (ulong seed = 0; seed < trials; seed++)
        {
            double[] noise = Made.Noise(20_000 + seed, 3, seconds * 100);
            mean += HarmonicFit.Fit(noise, 100, [20]).Harmonics[0].Power / trials;
        }

        // 2 sigma²/N with N = 100 a second; the expectation is stated for 1000 a second.
        Assert.Equal(10 * expected, mean, 0.5 * expected);
    }

    [Fact]
    public void MusclePowerIsThatOfTheBand()
    {
        double mean = 0;
        for (ulong seed = 0; seed < 100; seed++)
        {
            mean += ShortTrialLine.Of(Made.Noise(700 + seed, 1, 800), Made.Frame(1000)).EmgPower / 100;
        }

        // White noise of 0 to 500 Hz: 20 to 450 Hz hold 0.86 of its power, less what the eight fitted harmonics take (16 of 800 degrees of freedom).
        Assert.Equal(0.86 * (1 - (16.0 / 800)), mean, 0.02);
    }
}
