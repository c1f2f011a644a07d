using System.Collections.Immutable;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Measures;

/// <summary>How the baseline wanders and how much room it leaves: slope, range and headroom of one level a second.</summary>
/// <param name="SlopePerMinute">Theil-Sen slope, unit of the samples a minute.</param>
/// <param name="Range">95th less 5th percentile of the levels.</param>
/// <param name="HeadroomPercent">Room from the worst level to the nearer rail, in % of that rail's distance from zero; null without rails.</param>
public readonly record struct Drift(double SlopePerMinute, double Range, double? HeadroomPercent)
{
    /// <summary>Levels from which a slope means anything.</summary>
    public const int LeastLevels = 2;

    /// <summary>Drift of two levels or more.</summary>
    /// <exception cref="ArgumentException">When there are fewer.</exception>
    public static Drift Of(BaselineLevels baseline, Rails rails)
    {
        if (baseline.Count < LeastLevels)
        {
            throw new ArgumentException("two levels at least", nameof(baseline));
        }

        ImmutableArray<double> levels = baseline.Levels;
        double[] minutes = [.. baseline.Times.Select(seconds => seconds / 60)];
        double slope = TheilSen.Fit(minutes, levels.AsSpan()).Slope;
        double[] sorted = [.. levels.Order()];
        double range = Quantiles.Type7InPlace(sorted, 0.95) - Quantiles.Type7InPlace(sorted, 0.05);
        return new Drift(slope, range, Headroom(levels.Min(), levels.Max(), rails));
    }

    private static double? Headroom(double least, double greatest, Rails rails)
    {
        double? upper = rails.Upper is { } top ? Percent(top - greatest, Scale(top, rails)) : null;
        double? lower = rails.Lower is { } bottom ? Percent(least - bottom, Scale(bottom, rails)) : null;
        return (upper, lower) switch
        {
            ({ } a, { } b) => Math.Min(a, b),
            _ => upper ?? lower,
        };
    }

    /// <summary>The rail's distance from zero; where zero lies at or beyond a rail (raw codes), from the middle between the rails.</summary>
    private static double Scale(double rail, Rails rails) =>
        rails is { Lower: { } lower, Upper: { } upper } && (lower >= 0 || upper <= 0) ? (upper - lower) / 2 : Math.Abs(rail);

    private static double? Percent(double room, double scale) => scale > 0 ? Math.Max(0, 100 * room / scale) : null;
}
