using System.Collections.Immutable;

namespace ChannelAudit.Pilot;

/// <summary>A step that one reason at one site asks for, before like steps are put together.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="Sites">Where; none for the whole set-up.</param>
/// <param name="Reason">The reason code; null when readings ask for it.</param>
/// <param name="IsBlocking">Whether the site cannot be scored without it.</param>
/// <param name="Because">What was seen.</param>
/// <param name="At">When, for a step that waits.</param>
internal sealed record Proposal(StepKind Kind, ImmutableArray<string> Sites, string? Reason, bool IsBlocking, string Because, string? At = null)
{
    /// <summary>What of a site it may rescue, from 0 to 1: the share of the trials that the fault spoils.</summary>
    public double Share { get; init; } = 1;
}
