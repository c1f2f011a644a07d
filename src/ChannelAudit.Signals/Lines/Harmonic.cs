using System.Runtime.InteropServices;

namespace ChannelAudit.Signals.Lines;

/// <summary>One fitted sine wave A·cos(2πft) + B·sin(2πft), with time 0 at the first sample.</summary>
/// <param name="FrequencyHz">Frequency f in hertz.</param>
/// <param name="A">Cosine coefficient in the unit of the input.</param>
/// <param name="B">Sine coefficient in the unit of the input.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Harmonic(double FrequencyHz, double A, double B)
{
    /// <summary>Gets the mean power (A² + B²)/2 in the squared unit of the input, not corrected for noise.</summary>
    public double Power => ((A * A) + (B * B)) / 2;
}
