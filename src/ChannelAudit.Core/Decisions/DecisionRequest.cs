using ChannelAudit.Verdicts;

namespace ChannelAudit.Decisions;

/// <summary>What a person wants to decide, by the names that the audit uses.</summary>
/// <param name="Recording">The recording's id; null for the only one of the audit.</param>
/// <param name="Channel">The channel's name; null for all channels of a trial.</param>
/// <param name="Trial">The trial's number; null for the channel itself.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Reason">Why.</param>
/// <param name="By">Who decides.</param>
public sealed record DecisionRequest(string? Recording, string? Channel, int? Trial, Grade Verdict, string Reason, string By)
{
    /// <summary>File and line that it stands in, for messages; null when it stands in none.</summary>
    public string? Place { get; init; }
}
