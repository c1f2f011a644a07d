namespace ChannelAudit.Measures;

/// <summary>A contraction against rest.</summary>
/// <param name="Snr">In dB, or null.</param>
/// <param name="WhyNone">Why there is none, or null.</param>
public readonly record struct ContractionAnswer(double? Snr, string? WhyNone);
