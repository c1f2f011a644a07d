namespace ChannelAudit.Reports.Reviewing;

/// <summary>A measure of the trial as the page says it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Value">The number with its unit, or why there is none.</param>
/// <param name="Questionable">The limit with its unit; empty without one.</param>
/// <param name="Reject">The limit with its unit; empty without one.</param>
/// <param name="Grade">The worst finding it took part in; null when it has no value or no limit.</param>
public sealed record MeasureView(string Name, string Meaning, string Value, string Questionable, string Reject, string? Grade);
