namespace ChannelAudit.Trends;

/// <summary>One measure of one person's recordings beside those of the rest of the lab.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="OwnValues">Values of the own recordings.</param>
/// <param name="Own">Their middle; of a share the share.</param>
/// <param name="OwnInterval">Of a share its 95 % interval after Wilson; null else.</param>
/// <param name="Inside">How many of them lie inside the usual range; 0 of a share.</param>
/// <param name="Usual">The middle of the others; of a share theirs.</param>
/// <param name="Low">10th percentile of the others.</param>
/// <param name="High">90th percentile of the others.</param>
public sealed record OwnMeasure(TrendMeasure Measure, int OwnValues, double Own, (double Low, double High)? OwnInterval, int Inside, double Usual, double Low, double High)
{
    /// <summary>Whether values are counted.</summary>
    public bool IsShare => Measure.Scale == TrendScale.Share;
}
