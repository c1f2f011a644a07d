using ChannelAudit.Findings;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Pilot;

/// <summary>A reason at a site.</summary>
/// <param name="Code">The reason code.</param>
/// <param name="Grade">How bad: of the whole recording, or questionable where single trials show it.</param>
/// <param name="InTrialsOnly">Whether only single trials show it.</param>
/// <param name="Text">What was seen and what follows from it, one sentence.</param>
/// <param name="Seen">What was seen alone.</param>
public sealed record SiteReason(string Code, Grade Grade, bool InTrialsOnly, string Text, string Seen)
{
    /// <summary>What of the site it spoils, from 0 to 1: the share of its trials that carry the reason, or of the recorded time, whichever is more.</summary>
    public double Share { get; init; } = 1;

    /// <summary>The finding that says it, with its stretch of time; null when what could not be judged does.</summary>
    public Finding? Finding { get; init; }
}
