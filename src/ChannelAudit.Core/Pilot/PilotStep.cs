using System.Collections.Immutable;

namespace ChannelAudit.Pilot;

/// <summary>One thing to do next.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="Sites">At which sites, in file order; none where it concerns the whole set-up.</param>
/// <param name="Reasons">The reason codes that it is for, in the fixed order of the codes; none when readings alone ask for it.</param>
/// <param name="IsBlocking">Whether a site cannot be scored without it; otherwise it is only in doubt.</param>
/// <param name="Rescues">
/// What it may rescue: the share of its trials that the fault spoils, summed over the sites; where a site is only in doubt, a quarter of it.
/// </param>
/// <param name="Because">One sentence: what was seen.</param>
/// <param name="At">When to do it, <c>HH:MM</c>, for a step that waits; null otherwise.</param>
/// <param name="IsAtEyelid">Whether one of the sites lies at the eyelid.</param>
public sealed record PilotStep(
    StepKind Kind,
    ImmutableArray<string> Sites,
    ImmutableArray<string> Reasons,
    bool IsBlocking,
    double Rescues,
    string Because,
    string? At = null,
    bool IsAtEyelid = false)
{
    /// <summary>Minutes in the chair, roughly.</summary>
    public double Minutes => StepCost.MinutesOf(Kind);
}
