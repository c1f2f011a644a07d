using ChannelAudit.Measures;
using ChannelAudit.Signals.Random;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Flat stretches against a search of every window, which is slow and plain.</summary>
public sealed class FlatStretchesTests
{
    private static readonly Rails NoRails = new(null, null, false, false, 1);

    [Theory]
    [InlineData(4, 7, 1.001)]
    [InlineData(3, 10, 1.001)]
    [InlineData(12, 20, 2.001)]
    [InlineData(6, 9, 2)]
    [InlineData(5, 8, 0)]
    public void EverySampleOfEveryStillWindowAndEveryHeldRunIsFlat(int held, int still, double range)
    {
        FlatLimits limits = new(held, still, range, false);
        for (ulong seed = 0; seed < 300; seed++)
        {
            double[] samples = Wandering(seed, 400);
            SampleRanges found = new();

            FlatStretches.AddTo(found, samples, 0, limits, NoRails);

            Assert.Equal(ByHand(samples, limits, NoRails), Flags(found, samples.Length));
        }
    }

    [Fact]
    public void BlocksWithWhatLiesBeforeThemGiveTheSameStretches()
    {
        FlatLimits limits = new(5, 10, 1.001, false);
        int carry = Math.Max(limits.HeldRun, limits.StillLength);
        for (ulong seed = 0; seed < 200; seed++)
        {
            double[] samples = Wandering(1000 + seed, 600);
            SampleRanges found = new();
            for (int start = 0; start < samples.Length; start += 50)
            {
                int from = Math.Max(0, start - carry);
                FlatStretches.AddTo(found, samples.AsSpan(from, Math.Min(samples.Length, start + 50) - from), from, limits, NoRails);
            }

            Assert.Equal(ByHand(samples, limits, NoRails), Flags(found, samples.Length));
        }
    }

    [Fact]
    public void SamplesAtARailAreNotFlat()
    {
        double[] samples = [.. Enumerable.Repeat(100.0, 50), .. Made.Noise(61, 20, 50).Select(value => Math.Round(value)), .. Enumerable.Repeat(3.0, 50), 40];
        SampleRanges found = new();

        FlatStretches.AddTo(found, samples, 0, new FlatLimits(12, 20, 1.001, false), new Rails(-100, 100, false, false, 1));

        Assert.Equal([(100L, 150L)], found.All);
    }

    [Theory]
    [InlineData(2000, 50)]
    [InlineData(1000, 25)]
    [InlineData(497.4, 13)]
    [InlineData(250, 12)]
    public void AHeldRunIsTwentyFiveMillisecondsAndTwelveSamplesAtLeast(double rateHz, int samples)
    {
        Assert.Equal(samples, FlatLimits.Of(rateHz, 0.1, true, 0.05, 0.05, 60_000).HeldRun);
    }

    [Fact]
    public void FarTooCoarseResolutionIsSaidAndNothingIsCalledFlat()
    {
        double[] noise = [.. Made.Noise(62, 0.3, 60_000).Select(value => Math.Round(value))];
        RepeatRate repeats = new();
        repeats.Add(noise);

        FlatLimits limits = FlatLimits.Of(1000, 1, true, repeats.Chance, repeats.Share, noise.Length);

        Assert.True(limits.IsCoarse);
        Assert.False(limits.CanTell);
    }

    // Electrodes and amplifier make more than a tenth of a microvolt: a channel that hardly leaves its code is dead, however coarse it looks.
    [Fact]
    public void FineStepsThatHardlyMoveAreNoMatterOfResolution() => Assert.True(FlatLimits.Of(1000, 0.1, true, 0.9, 0.9, 60_000).CanTell);

    [Fact]
    public void CoarseResolutionIsSaidAndAsksForLongerRuns()
    {
        double[] noise = [.. Made.Noise(62, 0.7, 60_000).Select(value => Math.Round(value))];
        RepeatRate repeats = new();
        repeats.Add(noise);

        FlatLimits limits = FlatLimits.Of(1000, 1, true, repeats.Chance, repeats.Share, noise.Length);
        SampleRanges found = new();
        FlatStretches.AddTo(found, noise, 0, limits, NoRails);

        Assert.True(limits.IsCoarse);
        Assert.True(limits.HeldRun > 25);
        Assert.Empty(found.All);
    }

    [Fact]
    public void AStepOfOneDeviationRepeatsAsOftenAsTheFormulaSays()
    {
        double[] noise = [.. Made.Noise(63, 1, 60_000).Select(value => Math.Round(value))];
        int repeats = noise.Skip(1).Where((value, i) => value == noise[i]).Count();
        int longest = 1;
        for (int i = 1, run = 1; i < noise.Length; i++)
        {
            run = noise[i] == noise[i - 1] ? run + 1 : 1;
            longest = Math.Max(longest, run);
        }

        RepeatRate rate = new();
        rate.Add(noise);

        // q / (2 sqrt(pi) sqrt(s² + q²/12)) with q = s (Sheppard's correction). Of runs as long as 15 one expects 0.02 in 60 000 samples: the
        // commonest code has the chance 0.383.
        Assert.Equal(0.2709, repeats / 59_999.0, 0.006);
        Assert.Equal(0.2709, rate.Chance, 0.006);
        Assert.True(longest < 15);
    }

    /// <summary>A walk that stands still now and then, toggles now and then, and else jumps.</summary>
    private static double[] Wandering(ulong seed, int count)
    {
        Pcg32 random = new(seed);
        double[] samples = new double[count];
        int mode = 0;
        int left = 0;
        double level = 0;
        for (int i = 0; i < count; i++)
        {
            if (left-- == 0)
            {
                mode = (int)(4 * random.NextDouble());
                left = (int)(25 * random.NextDouble());
            }

            level = mode switch
            {
                0 => level,
                1 => level + (random.NextDouble() < 0.5 ? 0 : i % 2 == 0 ? 1 : -1),
                2 => level + Math.Round(random.NextDouble()),
                _ => Math.Round(6 * random.NextGaussian()),
            };
            samples[i] = level;
        }

        return samples;
    }

    private static bool[] ByHand(double[] samples, FlatLimits limits, Rails rails)
    {
        bool[] flat = new bool[samples.Length];
        for (int from = 0; from < samples.Length; from++)
        {
            int to = from;
            while (to < samples.Length && samples[to] == samples[from])
            {
                to++;
            }

            if (to - from >= limits.HeldRun && !rails.Holds(samples[from]))
            {
                flat.AsSpan(from, to - from).Fill(true);
            }

            if (limits.StillRange > 0 && from + limits.StillLength <= samples.Length)
            {
                ReadOnlySpan<double> window = samples.AsSpan(from, limits.StillLength);
                double least = double.PositiveInfinity;
                double greatest = double.NegativeInfinity;
                foreach (double value in window)
                {
                    least = Math.Min(least, value);
                    greatest = Math.Max(greatest, value);
                }

                if (greatest - least <= limits.StillRange)
                {
                    flat.AsSpan(from, limits.StillLength).Fill(true);
                }
            }
        }

        return flat;
    }

    private static bool[] Flags(SampleRanges ranges, int count)
    {
        bool[] flags = new bool[count];
        foreach ((long from, long to) in ranges.All)
        {
            flags.AsSpan((int)from, (int)(to - from)).Fill(true);
        }

        return flags;
    }
}
