using ChannelAudit.Verdicts;

namespace ChannelAudit.Pilot;

/// <summary>A reason at a site.</summary>
/// <param name="Code">The reason code.</param>
/// <param name="Grade">How bad: of the whole recording, or questionable where single trials show it.</param>
/// <param name="InTrialsOnly">Whether only single trials show it.</param>
/// <param name="Text">What was seen, one sentence.</param>
public sealed record SiteReason(string Code, Grade Grade, bool InTrialsOnly, string Text)
{
    /// <summary>The first part of <see cref="Text"/>: what was seen, without what follows from it.</summary>
    public string Short => Text.Split("; ")[0];
}
