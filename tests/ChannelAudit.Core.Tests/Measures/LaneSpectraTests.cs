using System.Runtime.Intrinsics;
using ChannelAudit.Measures;
using ChannelAudit.Signals.Random;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Four segments at once against one at a time by the plain measures, lane by lane.</summary>
public sealed class LaneSpectraTests
{
    private const int Lanes = 4;

    // At 117 Hz the floor beside the mains reaches over the end of the spectrum; at 104 Hz no harmonic counts any more.
    public static TheoryData<double, double> Frames { get; } = new() { { 1000, 50 }, { 2000, 60 }, { 1024, 49.97 }, { 130, 50 }, { 117, 50 }, { 104, 50 } };

    [Theory]
    [MemberData(nameof(Frames))]
    public void PowersAreThoseOfThePlainMeasures(double rateHz, double lineHz)
    {
        SpectralFrame frame = Made.Frame(rateHz, lineHz, Math.Round(lineHz));
        double[] packed = Packed(frame, 5);
        LaneSpectra lanes = new(packed, frame);
        (Vector256<double> line, Vector256<double> variance, Vector256<double> lineLeft, Vector256<double> varianceLeft) = lanes.Line();
        for (int lane = 0; lane < Lanes; lane++)
        {
            double[] density = Plain(packed, lane);
            PeakReading raw = LineNoise.Of(density, frame, 1);
            PeakReading left = LineNoise.Of(density, frame, 1, frame.Passes);

            Near(BandAmplitude.Power(density, frame) ?? 0, lanes.BandPower()[lane]);
            Near(BandAmplitude.Power(density, frame, frame.Passes) ?? 0, lanes.BandLeft()[lane]);
            Near(LowFrequency.Power(density, frame), lanes.Power(frame.LowBins)[lane]);
            Near(Surviving.Of(density, frame, 1).LowPower!.Value, lanes.PowerLeft(frame.LowBins)[lane]);
            Near(frame.TopRanges.IsEmpty ? 0 : Whiteness.Mean(density, frame.TopRanges), lanes.Mean(frame.TopRanges)[lane]);
            Near(raw.Power, line[lane]);
            Near(raw.StandardError, Math.Sqrt(variance[lane]));
            Near(left.Power, lineLeft[lane]);
            Near(left.StandardError, Math.Sqrt(varianceLeft[lane]));
        }
    }

    [Fact]
    public void WithoutBinsThereIsNoMean() => Assert.Equal(Vector256<double>.Zero, new LaneSpectra(Packed(Made.Frame(1000), 5), Made.Frame(1000)).Mean([]));

    // Density 1 all around. A peak of 20 in one bin is five times 1 and 19 more: over 16; one of 11 is under.
    [Theory]
    [InlineData(125, 20, 0, true)]
    [InlineData(125, 12.1, 0, true)]
    [InlineData(125, 11.9, 0, false)]
    [InlineData(125, 20, 18.9, true)]
    [InlineData(125, 20, 19.1, false)]
    [InlineData(100, 500, 0, false)]
    [InlineData(17, 500, 0, false)]
    [InlineData(449, 500, 0, true)]
    [InlineData(452, 500, 0, false)]
    [InlineData(53, 500, 0, true)]
    public void OnlyWhatStandsOutAndIsNoMainsMayBeANarrowPeak(int bin, double height, double leastPower, bool may)
    {
        SpectralFrame frame = Made.Frame(1000);
        double[] packed = new double[frame.Bins * Lanes];
        packed.AsSpan().Fill(1);
        packed[(bin * Lanes) + 2] = height;
        Vector256<double> found = new LaneSpectra(packed, frame).MayHoldNarrowPeak(Vector256.Create(leastPower));

        Assert.Equal([0L, 0, may ? -1 : 0, 0], Enumerable.Range(0, Lanes).Select(lane => BitConverter.DoubleToInt64Bits(found[lane])));
    }

    // The look at four takes the mean around a peak, the closer one the median, so that they differ where a peak just counts: at 4 standard errors. At 8 none is passed over.
    [Theory]
    [MemberData(nameof(Frames))]
    public void NothingThatCountsTwiceIsPassedOver(double rateHz, double lineHz)
    {
        SpectralFrame frame = Made.Frame(rateHz, lineHz, Math.Round(lineHz));
        for (ulong seed = 0; seed < 40; seed++)
        {
            double[] packed = Packed(frame, seed);
            Pcg32 random = new(seed);
            for (int lane = 0; lane < Lanes; lane++)
            {
                packed[((frame.FirstBin + (int)(random.NextDouble() * (frame.LastBin - frame.FirstBin))) * Lanes) + lane] *= 60;
            }

            Vector256<double> may = new LaneSpectra(packed, frame).MayHoldNarrowPeak(Vector256<double>.Zero);
            for (int lane = 0; lane < Lanes; lane++)
            {
                PeakReading peak = NarrowPeak.Of(Plain(packed, lane), frame, 1);
                Assert.True(peak.Power <= 8 * peak.StandardError || may[lane] != 0, FormattableString.Invariant($"seed {seed}, lane {lane}: {peak}"));
            }
        }
    }

    [Fact]
    public void SumsOfFourSpectraAreThoseOfEach()
    {
        double[] random = Made.Noise(3, 1, 4 * 50 * Lanes);
        double[] Part(int n) => random[(n * 50 * Lanes)..((n + 1) * 50 * Lanes)];
        (double[] reA, double[] imA, double[] reB, double[] imB) = (Part(0), Part(1), Part(2), Part(3));
        Vector256<double> power = LaneSums.Power([new BinRange(2, 5), new BinRange(40, 49)], reA, imA);
        (Vector256<double> re, Vector256<double> im) = LaneSums.Cross([new BinRange(2, 5), new BinRange(40, 49)], reA, imA, reB, imB);
        for (int lane = 0; lane < Lanes; lane++)
        {
            System.Numerics.Complex[] a = Complex(reA, imA, lane);
            System.Numerics.Complex[] b = Complex(reB, imB, lane);

            Near(a.Sum(value => value.Magnitude * value.Magnitude), power[lane]);
            System.Numerics.Complex cross = a.Zip(b).Aggregate(System.Numerics.Complex.Zero, (sum, pair) => sum + (System.Numerics.Complex.Conjugate(pair.First) * pair.Second));
            Near(cross.Real, re[lane]);
            Near(cross.Imaginary, im[lane]);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(7)]
    [InlineData(100)]
    public void TheMeanIsTheMean(int count)
    {
        double[] values = Made.Noise(8, 1, count);

        Near(values.Average(), LaneMean.Of(values));
    }

    [Fact]
    public void TheMedianOfSixteenIsThatOfAPlainSort()
    {
        for (ulong seed = 1; seed <= 50; seed++)
        {
            double[] values = Made.Noise(seed, 1, LaneMedian.Count * Lanes);
            Vector256<double>[] lanes = [.. Enumerable.Range(0, LaneMedian.Count).Select(i => Vector256.Create(values.AsSpan(i * Lanes, Lanes)))];
            Vector256<double> median = LaneMedian.InPlace(lanes);
            for (int lane = 0; lane < Lanes; lane++)
            {
                double[] sorted = [.. Enumerable.Range(0, LaneMedian.Count).Select(i => values[(i * Lanes) + lane]).Order()];
                Assert.Equal(0.5 * (sorted[7] + sorted[8]), median[lane]);
            }
        }
    }

    private static void Near(double expected, double actual) => Assert.InRange(actual, expected - (1e-12 * Math.Abs(expected)) - 1e-13, expected + (1e-12 * Math.Abs(expected)) + 1e-13);

    // Of a single segment: each bin is chi-square with two degrees of freedom, here around a falling density.
    private static double[] Packed(SpectralFrame frame, ulong seed)
    {
        Pcg32 random = new(seed);
        return [.. Enumerable.Range(0, frame.Bins * Lanes).Select(i => -Math.Log(1 - random.NextDouble()) / (1 + (i / Lanes * frame.BinHz / 100)))];
    }

    private static double[] Plain(double[] packed, int lane) => [.. packed.Where((_, i) => i % Lanes == lane)];

    private static System.Numerics.Complex[] Complex(double[] re, double[] im, int lane) =>
        [.. Enumerable.Range(0, 50).Where(bin => bin is (>= 2 and <= 5) or >= 40).Select(bin => new System.Numerics.Complex(re[(bin * Lanes) + lane], im[(bin * Lanes) + lane]))];
}
