using System.Runtime.InteropServices;

namespace ChannelAudit.Reports.Fairness;

/// <summary>Excluded of all.</summary>
/// <param name="Excluded">How many are excluded.</param>
/// <param name="Total">Of how many.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct ExcludedCount(int Excluded, int Total)
{
    /// <summary>The share, 0 to 1; there must be any.</summary>
    public double Share => (double)Excluded / Total;

    /// <summary>Both together.</summary>
    public static ExcludedCount operator +(ExcludedCount a, ExcludedCount b) => new(a.Excluded + b.Excluded, a.Total + b.Total);

    /// <summary>Several together.</summary>
    public static ExcludedCount Sum(IEnumerable<ExcludedCount> counts) => counts.Aggregate(default(ExcludedCount), (sum, one) => sum + one);
}
