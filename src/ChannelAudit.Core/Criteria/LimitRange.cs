using ChannelAudit.Measures;

namespace ChannelAudit.Criteria;

/// <summary>The values that make sense as a limit: not those that are always or never reached.</summary>
internal static class LimitRange
{
    /// <summary>Whether a value makes sense as a limit of a measure.</summary>
    public static bool Contains(MeasureDefinition measure, double value)
    {
        if (!double.IsFinite(value))
        {
            return false;
        }

        // Decibels have no end on either side.
        if (measure.Unit is "dB")
        {
            return true;
        }

        bool isReachable = value <= Most(measure);
        return isReachable && (measure.Sense == LimitSense.AtMost ? value >= 0 : value > 0);
    }

    /// <summary>The sensible values in words.</summary>
    public static string InWords(MeasureDefinition measure)
    {
        if (measure.Unit is "dB")
        {
            return "any finite number";
        }

        string from = measure.Sense == LimitSense.AtMost ? "from 0" : "above 0";
        double most = Most(measure);
        return double.IsPositiveInfinity(most) ? $"a finite number {from}" : FormattableString.Invariant($"{from}, up to {most}");
    }

    // A deflection counted from the median can be longer than the way to the nearer rail, and a fault can add more than there was: no upper end.
    private static double Most(MeasureDefinition measure) => measure switch
    {
        { Name: "peak_use" } => double.PositiveInfinity,
        { Unit: "%" } when measure.Name.EndsWith("_effect", StringComparison.Ordinal) => double.PositiveInfinity,
        { Unit: "%" } => 100,
        { Unit: "1" } when measure.Name.StartsWith("rho", StringComparison.Ordinal) => 1,
        _ => double.PositiveInfinity,
    };
}
