using System.Collections.Frozen;
using System.Collections.Immutable;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>What a rule says of one window.</summary>
/// <param name="Reason">The reason code.</param>
/// <param name="Grade">The grade; pass when nothing was found.</param>
/// <param name="Evidence">The numbers that passed their limits.</param>
/// <param name="Text">What was seen, in words; empty when nothing was found.</param>
/// <param name="Cause">The likely cause; empty when nothing was found.</param>
/// <param name="NotAssessed">Why the question could not be answered, or null; may stand beside a finding.</param>
/// <param name="FromQuietStretches">Whether quiet stretches around the window said it.</param>
/// <param name="Stretch">The stretch of time in seconds when it is not the whole window.</param>
/// <param name="InheritedPower">For a finding of quiet stretches the fault's power there behind the scoring filter; else null.</param>
/// <param name="IsLidMovement">Whether low frequencies were taken for blinks or lid movements: counted, never graded.</param>
internal sealed record RuleOutcome(
    string Reason,
    Grade Grade,
    ImmutableArray<Evidence> Evidence,
    string Text,
    string Cause,
    string? NotAssessed = null,
    bool FromQuietStretches = false,
    (double FromS, double ToS)? Stretch = null,
    bool IsLidMovement = false,
    double? InheritedPower = null)
{
    // What nearly every rule says of nearly every trial: made once.
    private static readonly FrozenDictionary<string, RuleOutcome> Clear =
        ReasonCode.All.ToFrozenDictionary(reason => reason, reason => new RuleOutcome(reason, Grade.Pass, [], string.Empty, string.Empty), StringComparer.Ordinal);

    /// <summary>Nothing found; not assessed when a cause is given.</summary>
    public static RuleOutcome None(string reason, string? notAssessed = null) =>
        notAssessed is null ? Clear[reason] : Clear[reason] with { NotAssessed = notAssessed };
}
