using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Measures;

/// <summary>Finds the flat stretches of consecutive samples: held (equal codes) or still (hardly moving for 100 ms).</summary>
/// <remarks>Samples at a rail are clipping, not flat. Limits: docs/measures/flatline.md.</remarks>
public static class FlatStretches
{
    /// <summary>Adds every flat stretch.</summary>
    /// <param name="samples">Consecutive samples without a gap.</param>
    /// <param name="offset">Timeline index of the first sample.</param>
    /// <param name="limits">The channel's limits.</param>
    /// <param name="rails">The channel's rails.</param>
    /// <param name="found">Receives the stretches.</param>
    public static void AddTo(SampleRanges found, ReadOnlySpan<double> samples, long offset, FlatLimits limits, Rails rails)
    {
        if (limits.HeldRun > 0)
        {
            AddHeld(found, samples, offset, limits.HeldRun, rails);
        }

        if (limits.StillRange > 0)
        {
            AddStill(found, samples, offset, limits, rails);
        }
    }

    private static void AddHeld(SampleRanges found, ReadOnlySpan<double> samples, long offset, int run, Rails rails)
    {
        // A run of n equal samples covers every n-th sample and the one before it: the rest need not be looked at.
        int stride = Math.Max(1, run - 1);
        for (int probe = stride; probe < samples.Length; probe += stride)
        {
            double value = samples[probe];
            if (samples[probe - 1] != value || rails.Holds(value))
            {
                continue;
            }

            int from = probe - 1;
            while (from > 0 && samples[from - 1] == value)
            {
                from--;
            }

            int to = probe + 1;
            while (to < samples.Length && samples[to] == value)
            {
                to++;
            }

            if (to - from >= run)
            {
                found.Add(offset + from, offset + to);
            }

            probe = Math.Max(probe, to - 1 - ((to - 1) % stride));
        }
    }

    private static void AddStill(SampleRanges found, ReadOnlySpan<double> samples, long offset, FlatLimits limits, Rails rails)
    {
        // Every window of 100 ms holds a whole aligned block of half its length: where none is still, no window is.
        int block = (limits.StillLength + 1) / 2;
        int doneTo = 0;
        for (int start = 0; start + block <= samples.Length; start += block)
        {
            (double least, double greatest) = Extremes.Of(samples.Slice(start, block));
            if (greatest - least > limits.StillRange || rails.Holds(least) || rails.Holds(greatest) || start + block <= doneTo)
            {
                continue;
            }

            int from = Math.Max(0, start - limits.StillLength);
            doneTo = GrowStill(found, samples, offset, limits, from);
        }
    }

    /// <summary>
    /// Follows still windows from a sample on until the signal moves for good; returns the first sample at which a window may start that was
    /// not followed.
    /// </summary>
    private static int GrowStill(SampleRanges found, ReadOnlySpan<double> samples, long offset, FlatLimits limits, int from)
    {
        int giveUp = from + (4 * limits.StillLength);
        double least = samples[from];
        double greatest = least;
        int at = from + 1;
        for (; at <= samples.Length; at++)
        {
            bool fits = at < samples.Length
                && Math.Max(greatest, samples[at]) - Math.Min(least, samples[at]) <= limits.StillRange;
            if (fits)
            {
                least = Math.Min(least, samples[at]);
                greatest = Math.Max(greatest, samples[at]);
                continue;
            }

            if (at - from >= limits.StillLength)
            {
                found.Add(offset + from, offset + at);
                giveUp = at + (4 * limits.StillLength);
            }

            if (at >= samples.Length)
            {
                return at;
            }

            // Start anew at the earliest sample that still fits with this one.
            least = greatest = samples[at];
            from = at;
            while (Math.Max(greatest, samples[from - 1]) - Math.Min(least, samples[from - 1]) <= limits.StillRange)
            {
                from--;
                least = Math.Min(least, samples[from]);
                greatest = Math.Max(greatest, samples[from]);
            }

            if (at >= giveUp)
            {
                return from;
            }
        }

        return at;
    }
}
