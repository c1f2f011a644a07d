using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>What the quiet segments on one side of a trial show.</summary>
/// <param name="Grade">Their median grade.</param>
/// <param name="Rms">Their median level.</param>
/// <param name="Hz">The frequency of the middle one.</param>
/// <param name="Other">The level of the same segment on the other side of the scoring filter: raw where levels are those left, else left.</param>
/// <param name="IsOneFrequency">Whether all show the same frequency.</param>
internal readonly record struct SideReading(Grade Grade, double Rms, double Hz, double Other, bool IsOneFrequency);
