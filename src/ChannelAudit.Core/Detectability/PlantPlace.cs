namespace ChannelAudit.Detectability;

/// <summary>Where a known fault is planted, and which trials then have it.</summary>
/// <param name="Channel">Position among the audited channels.</param>
/// <param name="Other">The other channel of a pair; null for a fault of one channel.</param>
/// <param name="FromS">Start of the stretch that is changed, in seconds.</param>
/// <param name="ToS">Its end.</param>
/// <param name="Trials">Positions of the trials that have the fault.</param>
internal sealed record PlantPlace(int Channel, int? Other, double FromS, double ToS, IReadOnlyList<int> Trials)
{
    /// <summary>Of a joint: whether it makes the two channels alike (first electrode to first), or opposite (first to second).</summary>
    public bool IsOpposite { get; init; }

    /// <summary>Whether two places share time.</summary>
    public bool Meets(PlantPlace other) => FromS < other.ToS && other.FromS < ToS;
}
