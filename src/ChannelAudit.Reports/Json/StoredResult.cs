using ChannelAudit.Results;

namespace ChannelAudit.Reports.Json;

/// <summary>What a <c>result.json</c> holds.</summary>
/// <param name="Origin">With what it was made.</param>
/// <param name="Result">Everything known about the recording.</param>
public sealed record StoredResult(ResultOrigin Origin, RecordingResult Result);
