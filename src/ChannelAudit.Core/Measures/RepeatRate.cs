namespace ChannelAudit.Measures;

/// <summary>How often a sample repeats the one before it: tells whether the resolution is too coarse to see flat stretches.</summary>
/// <remarks>
/// The median over parts of 512 samples of the share of repeats. For noise of standard deviation s stored in steps q, a repeat has the
/// chance q / (2 sqrt(pi) sqrt(s² + q²/12)), 0.2709 at q = s (derived; see docs/measures/flatline.md). Parts that do not move at all are
/// left out and a median is used, so that dead stretches do not make a channel look coarse.
/// </remarks>
public sealed class RepeatRate
{
    /// <summary>The chance of a repeat at which a step equals the noise: above it the resolution is too coarse.</summary>
    public const double Coarse = 0.2709;

    private const int Part = 512;
    private const int LeastPart = 64;

    // One bin for each share in steps of 1/Part.
    private readonly long[] parts = new long[Part + 1];
    private long total;

    /// <summary>The chance that a sample repeats the one before; 0 when no part moves.</summary>
    public double Chance
    {
        get
        {
            long seen = 0;
            int bin = -1;
            while (2 * seen < total)
            {
                seen += parts[++bin];
            }

            return Math.Max(0, bin) / (double)Part;
        }
    }

    /// <summary>Adds consecutive samples.</summary>
    public void Add(ReadOnlySpan<double> samples)
    {
        for (int start = 0; samples.Length - start >= LeastPart; start += Part)
        {
            ReadOnlySpan<double> part = samples.Slice(start, Math.Min(Part, samples.Length - start));
            int repeats = 0;
            for (int i = 1; i < part.Length; i++)
            {
                repeats += part[i] == part[i - 1] ? 1 : 0;
            }

            int pairs = part.Length - 1;
            if (repeats < pairs)
            {
                parts[(int)Math.Round((double)Part * repeats / pairs)]++;
                total++;
            }
        }
    }
}
