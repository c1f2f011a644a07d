using ChannelAudit.Signals.Spectra;
using CsCheck;

namespace ChannelAudit.Signals.Tests.Spectra;

public sealed class RealFftTests
{
    public static TheoryData<int> Lengths => [1, 2, 3, 4, 6, 7, 8, 10, 12, 15, 16, 30, 64, 90, 250, 497, 500, 995, 1000,
        1001, 1024, 1200, 1800, 2000, 2048, 2402, 4096, 4974];

    public static TheoryData<int> PowersOfTwo => [2, 8, 256, 1024, 4096];

    /// <summary>The definition: a direct sum, with the angle reduced in whole numbers.</summary>
    [Theory]
    [MemberData(nameof(Lengths))]
    public void SpectrumAgreesWithTheDirectSum(int length)
    {
        var samples = NoiseOf.Seed((ulong)length, length);
        var fft = RealFft.For(length);
        var (re, im) = (new double[fft.Bins], new double[fft.Bins]);

        fft.Transform(samples, re, im);

        var size = Math.Sqrt(samples.Sum(sample => sample * sample));
        for (var k = 0; k < fft.Bins; k += Math.Max(1, fft.Bins / 97))
        {
            var (wantedRe, wantedIm) = DirectSum(samples, k);
            Near.Within(2E-13 * size, wantedRe, re[k]);
            Near.Within(2E-13 * size, wantedIm, im[k]);
        }
    }

    /// <summary>FftSharp, a general library.</summary>
    [Theory]
    [MemberData(nameof(PowersOfTwo))]
    public void SpectrumAgreesWithFftSharp(int length)
    {
        var samples = NoiseOf.Seed(5, length);
        var fft = RealFft.For(length);
        var (re, im) = (new double[fft.Bins], new double[fft.Bins]);

        fft.Transform(samples, re, im);

        var wanted = FftSharp.FFT.ForwardReal(samples);
        Near.All([.. wanted.Select(value => value.Real)], re, 1E-10);
        Near.All([.. wanted.Select(value => value.Imaginary)], im, 1E-10);
    }

    /// <summary>Parseval's theorem: Σx² = Σ|X|²/N over both sides of the spectrum.</summary>
    [Theory]
    [MemberData(nameof(Lengths))]
    public void PowerIsKept(int length)
    {
        var samples = NoiseOf.Seed(6, length);
        var fft = RealFft.For(length);
        var (re, im) = (new double[fft.Bins], new double[fft.Bins]);

        fft.Transform(samples, re, im);

        var power = 0.0;
        for (var k = 0; k < fft.Bins; k++)
        {
            var sides = k == 0 || 2 * k == length ? 1 : 2;
            power += sides * ((re[k] * re[k]) + (im[k] * im[k])) / length;
        }

        Near.One(samples.Sum(sample => sample * sample), power, 1E-12);
    }

    /// <summary>The four lanes are the same transform, to the last bit.</summary>
    [Theory]
    [InlineData(2000)]
    [InlineData(497)]
    public void LanesDoNotTouchEachOther(int length)
    {
        var fft = RealFft.For(length);
        var lanes = NoiseOf.Seed(7, 4 * length);
        var (re, im) = (new double[4 * fft.Bins], new double[4 * fft.Bins]);
        var (oneRe, oneIm) = (new double[fft.Bins], new double[fft.Bins]);
        fft.TransformFour(lanes, re, im);

        for (var lane = 0; lane < 4; lane++)
        {
            fft.Transform(Lane(lanes, lane), oneRe, oneIm);

            Assert.Equal(Lane(re, lane), oneRe);
            Assert.Equal(Lane(im, lane), oneIm);
        }
    }

    /// <summary>Shift theorem: a turn of the signal leaves every magnitude.</summary>
    [Fact]
    public void TurningTheSignalKeepsTheMagnitudes() =>
        Law.Holds(
            Gen.Select(Gen.Int[2, 200], Gen.Int[0, 199]),
            200,
            @case =>
            {
                var (length, shift) = @case;
                var samples = NoiseOf.Seed(8, length);
                double[] turned = [.. Enumerable.Range(0, length).Select(n => samples[(n + shift) % length])];
                Near.All(Magnitudes(samples), Magnitudes(turned), 1E-10);
            });

    [Fact]
    public void WrongLengthsAreRefused()
    {
        var fft = RealFft.For(10);

        Assert.Throws<ArgumentOutOfRangeException>(() => RealFft.For(0));
        Assert.Throws<ArgumentException>(() => fft.Transform(new double[9], new double[6], new double[6]));
        Assert.Throws<ArgumentException>(() => fft.Transform(new double[10], new double[5], new double[6]));
        Assert.Throws<ArgumentException>(() => fft.TransformFour(new double[40], new double[24], new double[23]));
    }

    private static double[] Magnitudes(double[] samples)
    {
        var fft = RealFft.For(samples.Length);
        var (re, im) = (new double[fft.Bins], new double[fft.Bins]);
        fft.Transform(samples, re, im);
        return [.. re.Zip(im, (a, b) => Math.Sqrt((a * a) + (b * b)))];
    }

    private static double[] Lane(double[] values, int lane) => [.. values.Where((_, index) => index % 4 == lane)];

    private static (double Re, double Im) DirectSum(double[] samples, int k)
    {
        double re = 0, im = 0;
        for (var n = 0; n < samples.Length; n++)
        {
            var angle = 2 * Math.PI * ((long)n * k % samples.Length) / samples.Length;
            re += samples[n] * Math.Cos(angle);
            im -= samples[n] * Math.Sin(angle);
        }

        return (re, im);
    }
}
