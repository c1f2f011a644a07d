namespace ChannelAudit.Reports.Comparing;

/// <summary>The number behind a change, in both audits.</summary>
/// <param name="Measure">The measure as tables name it.</param>
/// <param name="Unit">Its unit as tables print it.</param>
/// <param name="ValueA">Its value in the first audit, or null when it has none there.</param>
/// <param name="ValueB">Its value in the second audit, or null.</param>
/// <param name="LimitA">The limit of the worse grade in the first audit, or null when it has none there.</param>
/// <param name="LimitB">The limit of the worse grade in the second audit, or null.</param>
/// <param name="Where">Where the value is from when it is not the trial's or channel's own, in words; only one audit tells it then. Else null.</param>
public sealed record MeasureChange(string Measure, string Unit, double? ValueA, double? ValueB, double? LimitA, double? LimitB, string? Where = null);
