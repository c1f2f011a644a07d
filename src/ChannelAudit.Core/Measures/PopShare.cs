using ChannelAudit.Signals.Filters;

namespace ChannelAudit.Measures;

/// <summary>How much of a stretch's high-passed energy its pops hold.</summary>
/// <remarks>
/// Counted are the 50 ms on either side of every pop, and every sample at least half as high as the smallest of them: pops come in clusters, and
/// those that overlap have no shape to know them by.
/// </remarks>
internal static class PopShare
{
    private const double ReachSeconds = 0.05;

    /// <summary>Energy at pops and of all, of one unbroken piece.</summary>
    /// <param name="samples">The piece, settled on its first sample.</param>
    /// <param name="start">Timeline index of the first.</param>
    /// <param name="pops">Timeline indices of the pops, ascending.</param>
    /// <param name="leastHeight">Height of the smallest of them.</param>
    /// <param name="rateHz">Samples per second.</param>
    public static (double AtPops, double All) Energy(ReadOnlySpan<double> samples, long start, ReadOnlySpan<long> pops, double leastHeight, double rateHz)
    {
        double[] passed = new double[samples.Length];
        SettledHighPass.Filter(PopFilter.At(rateHz), samples, 0, passed);
        long reach = (long)(ReachSeconds * rateHz);
        double atPops = 0;
        double all = 0;
        int next = 0;
        for (int i = 0; i < passed.Length; i++)
        {
            while (next < pops.Length && pops[next] + reach < start + i)
            {
                next++;
            }

            double energy = passed[i] * passed[i];
            all += energy;
            bool isAtPop = next < pops.Length && Math.Abs(pops[next] - (start + i)) <= reach;
            atPops += isAtPop || Math.Abs(passed[i]) >= leastHeight / 2 ? energy : 0;
        }

        return (atPops, all);
    }
}
