using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings;

/// <summary>A number beyond its limit.</summary>
/// <param name="Measure">The measure's name, as in <c>measures.tsv</c>.</param>
/// <param name="Value">The value found.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Limit">The limit it passed, of the finding's grade.</param>
public sealed record Evidence(string Measure, double Value, string Unit, double Limit);
