using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>A short, isolated spike.</summary>
/// <param name="At">Timeline index of its top.</param>
/// <param name="Height">Its height behind the high-pass, unit of the samples.</param>
/// <param name="Spectrum">Where its energy lies; null where that cannot be told.</param>
public readonly record struct Pop(long At, double Height, SpikeSpectrum? Spectrum = null);
