namespace ChannelAudit.Reports.Json;

/// <summary>With what a result was made: kept beside it, so that results of different audits are not mixed unseen.</summary>
/// <param name="Version">The version of the program.</param>
/// <param name="CriteriaSha256">SHA-256 of the limits in force.</param>
/// <param name="SetupSha256">SHA-256 of the setup file, or null when there was none.</param>
public sealed record ResultOrigin(string Version, string CriteriaSha256, string? SetupSha256);
