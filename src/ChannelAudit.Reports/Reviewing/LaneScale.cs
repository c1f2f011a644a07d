using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>The numbers beside a trace: round ones where there is room for several, else one above and one below zero; in a low lane the heading says them.</summary>
/// <param name="Pair">The number above and below zero; null where there is room for several, 0 where there is none to name.</param>
/// <param name="IsInHeading">Whether there is no room for them beside the trace.</param>
internal readonly record struct LaneScale(double? Pair, bool IsInHeading)
{
    private const double MostOfReach = 0.95;

    private static readonly double[] Round = [1, 1.5, 2, 3, 4, 5, 6, 8, 10];

    /// <summary>No numbers: of a flat line any would be invented.</summary>
    public static LaneScale None { get; } = new(0, true);

    /// <summary>The lines as a heading says them: <c>, lines at ±20</c>; empty where they have numbers of their own.</summary>
    public string Words => IsInHeading && Pair is > 0 and { } pair ? $", lines at \u00B1{Quantities.Short(pair)}" : string.Empty;

    /// <summary>The scale of a lane.</summary>
    /// <param name="axis">Values to pixels, zero in the middle.</param>
    /// <param name="reach">The greatest value.</param>
    /// <param name="height">The height of the lane's field.</param>
    /// <param name="line">The height of a line of text.</param>
    public static LaneScale Of(ValueAxis axis, double reach, float height, float line)
    {
        bool hasSeveral = axis.Ticks(CellPen.TickLines * line).Count(tick => tick.Value != 0) >= 2;
        return hasSeveral ? new LaneScale(null, false) : new LaneScale(Rounded(MostOfReach * reach), height < 2 * line);
    }

    private static double Rounded(double most)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(most)));
        return Math.Round(Round.Where(round => round * power <= most * (1 + 1e-9)).DefaultIfEmpty(1).Max() * power, 12);
    }
}
