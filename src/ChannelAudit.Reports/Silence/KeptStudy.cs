using ChannelAudit.Detectability;

namespace ChannelAudit.Reports.Silence;

/// <summary>A study that stands beside a recording's results and still holds for them.</summary>
/// <param name="Result">The study.</param>
/// <param name="Sha256">SHA-256 of its file; the page names it, so that a later run sees whether the page shows it.</param>
public sealed record KeptStudy(DetectabilityResult Result, string Sha256);
