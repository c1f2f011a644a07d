using ChannelAudit.Measures;

namespace ChannelAudit.Findings.Rules;

/// <summary>A peak and the muscle beside it, raw and behind the scoring filter.</summary>
/// <param name="Raw">The raw reading.</param>
/// <param name="Emg">The raw muscle power.</param>
/// <param name="Left">The reading behind the filter.</param>
/// <param name="EmgLeft">The muscle power behind the filter.</param>
/// <param name="Segments">Segments in the mean, 1 or more.</param>
/// <param name="EffectPercent">What it adds to the score in %; null for a single segment or where it cannot be said.</param>
/// <param name="ShiftUv">The same in µV.</param>
internal readonly record struct PeakCase(
    PeakReading Raw, double Emg, PeakReading Left, double EmgLeft, int Segments, double? EffectPercent, double? ShiftUv);
