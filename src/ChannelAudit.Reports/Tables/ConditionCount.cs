namespace ChannelAudit.Reports.Tables;

/// <summary>Usable trials of one channel in one condition: a row of <c>conditions.tsv</c>.</summary>
/// <param name="Channel">The channel's name.</param>
/// <param name="Condition">The label of the trials, or null for those without one.</param>
/// <param name="Pass">Trials whose computed verdict is pass.</param>
/// <param name="Questionable">Trials whose computed verdict is questionable.</param>
/// <param name="Reject">Trials whose computed verdict is reject.</param>
/// <param name="Usable">Trials whose final verdict is not reject.</param>
/// <param name="Minimum">Usable trials that the condition needs.</param>
public sealed record ConditionCount(string Channel, string? Condition, int Pass, int Questionable, int Reject, int Usable, int Minimum)
{
    /// <summary>All scored trials of the condition.</summary>
    public int Trials => Pass + Questionable + Reject;

    /// <summary>Whether enough trials are usable; the minimum itself is enough.</summary>
    public bool Enough => Usable >= Minimum;
}
