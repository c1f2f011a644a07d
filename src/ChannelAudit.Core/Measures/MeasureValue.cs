namespace ChannelAudit.Measures;

/// <summary>A number, or why there is none.</summary>
/// <param name="Measure">The measure's name.</param>
/// <param name="Value">The number; null when there is none.</param>
/// <param name="Note">Why there is none; or what limits the number; null when there is nothing to say.</param>
public readonly record struct MeasureValue(string Measure, double? Value, string? Note = null)
{
    /// <summary>A measure without a value, with its cause.</summary>
    public static MeasureValue None(string measure, string cause) => new(measure, null, cause);
}
