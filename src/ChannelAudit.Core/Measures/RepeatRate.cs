namespace ChannelAudit.Measures;

/// <summary>How often a sample repeats the one before it: tells whether the resolution is too coarse to see flat stretches.</summary>
/// <remarks>
/// The share of runs of equal codes that are longer than one sample. For noise of standard deviation s stored in steps q, a repeat
/// has the chance q / (2 sqrt(pi) sqrt(s² + q²/12)), 0.2709 at q = s (derived; see docs/measures/flatline.md). A dead stretch is a single
/// run, so it does not move the share.
/// </remarks>
public sealed class RepeatRate
{
    /// <summary>The chance of a repeat at which a step equals the noise: above it the resolution is too coarse.</summary>
    public const double Coarse = 0.2709;

    private long runs;
    private long repeated;

    /// <summary>The chance that a sample repeats the one before; 0 without samples.</summary>
    public double Chance => runs == 0 ? 0 : (double)repeated / runs;

    /// <summary>Adds consecutive samples.</summary>
    public void Add(ReadOnlySpan<double> samples)
    {
        int at = 1;
        while (at < samples.Length)
        {
            runs++;
            if (samples[at] == samples[at - 1])
            {
                repeated++;
                while (at < samples.Length && samples[at] == samples[at - 1])
                {
                    at++;
                }
            }

            at++;
        }
    }
}
