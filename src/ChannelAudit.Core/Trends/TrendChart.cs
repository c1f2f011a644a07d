using System.Collections.Immutable;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Signals.Trends;

namespace ChannelAudit.Trends;

/// <summary>A line by weeks with its control chart: the moving average against the limits of the weeks before the change, and the first alarm.</summary>
/// <remarks>
/// Centre and spread are the median and the median absolute deviation of the weeks without the change, on the scale that lines are looked at. λ = 0.2 and L = 3 for the
/// average, k = 0.5 and h = 5 spreads for the cumulative sum: what NIST's handbook and the textbooks take to find a change of one spread. The chart shows when a lab
/// would have seen it; whether there is a finding is decided by <see cref="ChangeTest"/>.
/// </remarks>
/// <param name="Weeks">Mondays of the weeks with values.</param>
/// <param name="Values">Middle value, or share, of each week on the scale that lines are looked at.</param>
/// <param name="Counts">How many values each week has.</param>
/// <param name="Averages">The moving average after each week.</param>
/// <param name="Centre">The level without the change.</param>
/// <param name="Limit">How far from it the average may lie.</param>
/// <param name="FirstAlarm">Monday of the first week, from the change on, after which the cumulative sum is beyond its limit; null when there is none.</param>
/// <param name="IsBeyondNow">Whether the moving average lies beyond its limit after the last week.</param>
public sealed record TrendChart(
    ImmutableArray<DateOnly> Weeks,
    ImmutableArray<double> Values,
    ImmutableArray<int> Counts,
    ImmutableArray<double> Averages,
    double Centre,
    double Limit,
    DateOnly? FirstAlarm,
    bool IsBeyondNow)
{
    private const double Weight = 0.2;
    private const double Width = 3;
    private const double Allowance = 0.5;
    private const double Interval = 5;

    /// <summary>Makes the chart.</summary>
    /// <param name="weeks">Mondays in order of time.</param>
    /// <param name="values">Their middle values or shares.</param>
    /// <param name="counts">How many values each has.</param>
    /// <param name="isChanged">For each week whether it belongs to the change.</param>
    /// <param name="isUp">Whether the change went up.</param>
    /// <param name="leastSpread">The spread is taken as at least this.</param>
    public static TrendChart Of(
        ImmutableArray<DateOnly> weeks, ImmutableArray<double> values, ImmutableArray<int> counts, ImmutableArray<bool> isChanged, bool isUp, double leastSpread)
    {
        double[] inControl = [.. values.Where((_, i) => !isChanged[i])];
        double centre = Quantiles.Median(inControl);
        double spread = Math.Max(leastSpread, RobustScale.Sigma(inControl));
        double[] averages = Ewma.Of(values.AsSpan(), centre, Weight);
        double limit = Ewma.Limit(spread, Weight, Width);
        int first = isChanged.IndexOf(true);
        int alarm = Cusum.Of(values.AsSpan()[first..], centre, Allowance * spread).FirstBeyond(Interval * spread, isUp);
        return new TrendChart(
            weeks, values, counts, [.. averages], centre, limit, alarm < 0 ? null : weeks[first + alarm], Math.Abs(averages[^1] - centre) > limit);
    }
}
