namespace ChannelAudit.Measures;

/// <summary>The values beyond which a channel cannot go: the file's limits, or a rail seen in the data.</summary>
/// <param name="Lower">Lower rail, or null when none is known.</param>
/// <param name="Upper">Upper rail, or null when none is known.</param>
/// <param name="LowerHidden">Whether the lower one was seen in the data rather than stated.</param>
/// <param name="UpperHidden">Whether the upper one was seen in the data rather than stated.</param>
/// <param name="Step">The smallest step between two values: a sample within one step of a rail is at it.</param>
public readonly record struct Rails(double? Lower, double? Upper, bool LowerHidden, bool UpperHidden, double Step)
{
    // A thousandth of a step takes up what scaling to microvolts rounds.
    private const double Slack = 1.001;

    /// <summary>Samples at or below this are at the lower rail.</summary>
    public double LowerEdge => Lower is { } lower ? lower + (Slack * Step) : double.NegativeInfinity;

    /// <summary>Samples at or above this are at the upper rail.</summary>
    public double UpperEdge => Upper is { } upper ? upper - (Slack * Step) : double.PositiveInfinity;

    /// <summary>Whether any rail is known.</summary>
    public bool AnyKnown => Lower is not null || Upper is not null;

    /// <summary>Whether a sample is at a rail.</summary>
    public bool Holds(double sample) => sample <= LowerEdge || sample >= UpperEdge;

    /// <summary>Distance from a level to the nearer known rail; null when none is known.</summary>
    public double? DistanceFrom(double level) => (Lower, Upper) switch
    {
        ({ } lower, { } upper) => Math.Min(level - lower, upper - level),
        ({ } lower, null) => level - lower,
        (null, { } upper) => upper - level,
        _ => null,
    };
}
