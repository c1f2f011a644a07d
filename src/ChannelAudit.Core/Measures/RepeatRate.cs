namespace ChannelAudit.Measures;

/// <summary>How often a sample repeats the one before it: tells whether the resolution is too coarse to see flat stretches.</summary>
/// <remarks>
/// The median over parts of 512 samples of the share of repeats, runs of 32 and more left out: dead stretches are no sign of a coarse
/// step. Where nothing but such runs is left the share of all samples counts, unless the channel never moves. For noise of standard
/// deviation s stored in steps q, a repeat has the chance q / (2 sqrt(pi) sqrt(s² + q²/12)), 0.2709 at q = s (derived; see
/// docs/measures/flatline.md).
/// </remarks>
public sealed class RepeatRate
{
    /// <summary>The chance of a repeat at which a step equals the noise: above it the resolution is too coarse.</summary>
    public const double Coarse = 0.2709;

    private const int Part = 512;
    private const int LeastPairs = 64;
    private const int LongRun = 32;

    // One bin for each share in steps of 1/Part.
    private readonly long[] parts = new long[Part + 1];
    private long counted;
    private long pairs;
    private long repeats;

    /// <summary>The chance that a sample repeats the one before; 0 when the channel never moves.</summary>
    public double Chance => counted > 0 ? MedianOfParts() : repeats < pairs ? (double)repeats / pairs : 0;

    /// <summary>The share of all samples that repeat the one before, long runs included.</summary>
    public double Share => pairs > 0 ? (double)repeats / pairs : 0;

    /// <summary>Adds consecutive samples.</summary>
    public void Add(ReadOnlySpan<double> samples)
    {
        for (int start = 0; start < samples.Length; start += Part)
        {
            AddPart(samples.Slice(start, Math.Min(Part, samples.Length - start)));
        }
    }

    private void AddPart(ReadOnlySpan<double> part)
    {
        int shortPairs = 0;
        int shortRepeats = 0;
        int from = 0;
        for (int at = 1; at <= part.Length; at++)
        {
            if (at < part.Length && part[at] == part[from])
            {
                continue;
            }

            // A run of n samples: n - 1 repeats and the change behind it.
            int run = at - from;
            repeats += run - 1;
            shortPairs += run < LongRun ? run : 0;
            shortRepeats += run < LongRun ? run - 1 : 0;
            from = at;
        }

        pairs += part.Length - 1;
        if (shortPairs >= LeastPairs)
        {
            parts[(int)Math.Round((double)Part * shortRepeats / shortPairs)]++;
            counted++;
        }
    }

    private double MedianOfParts()
    {
        long seen = 0;
        int bin = -1;
        while (2 * seen < counted)
        {
            seen += parts[++bin];
        }

        return bin / (double)Part;
    }
}
