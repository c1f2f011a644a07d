using ChannelAudit.Views;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>How far up and down a trace is drawn.</summary>
/// <param name="Reach">The range is from minus to plus this, around the baseline.</param>
/// <param name="Largest">The largest distance from the baseline.</param>
internal readonly record struct TraceRange(double Reach, double Largest)
{
    private const double MostBeyond = 4;
    private const double MostShare = 0.995;
    private const double Air = 1.1;

    /// <summary>Whether a few peaks are cut off so that the rest can be seen.</summary>
    public bool IsCut => Largest > Reach;

    /// <summary>Whether every sample lies at the baseline.</summary>
    public bool IsFlat => Largest == 0;

    /// <summary>All of it, unless a few peaks would squeeze the rest to a line.</summary>
    public static TraceRange Of(Trace trace, Func<int, double> baseline)
    {
        double[] reaches = [.. Enumerable.Range(0, trace.Columns)
            .Select(column => Math.Max(Math.Abs(trace.Greatest[column] - baseline(column)), Math.Abs(trace.Least[column] - baseline(column))))
            .Where(double.IsFinite)
            .Order()];
        if (reaches.Length == 0)
        {
            return new TraceRange(1, 0);
        }

        double largest = reaches[^1];
        double most = reaches[(int)(MostShare * (reaches.Length - 1))];
        double reach = most > 0 && largest > MostBeyond * most ? MostBeyond / 2 * most : largest * Air;
        return new TraceRange(reach > 0 ? reach : 1, largest);
    }
}
