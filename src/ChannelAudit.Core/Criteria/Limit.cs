namespace ChannelAudit.Criteria;

/// <summary>A measure and the value at which it counts as reached; the limit itself belongs to the worse side.</summary>
/// <param name="Measure">The measure's name.</param>
/// <param name="Value">The limit, in the measure's unit.</param>
public sealed record Limit(string Measure, double Value);
