using ChannelAudit.Measures;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Results;

/// <summary>A measure as it stands in <c>measures.tsv</c>.</summary>
/// <param name="Value">The number, or why there is none.</param>
/// <param name="Grade">The worst finding this measure took part in; null when the measure has no value or no limit of its own.</param>
/// <param name="Questionable">Its own questionable limit, or null.</param>
/// <param name="Reject">Its own reject limit, or null.</param>
public readonly record struct GradedMeasure(MeasureValue Value, Grade? Grade, double? Questionable, double? Reject);
