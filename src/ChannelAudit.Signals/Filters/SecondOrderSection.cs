using System.Runtime.InteropServices;

namespace ChannelAudit.Signals.Filters;

/// <summary>A recursive filter y[n] = B0·x[n] + B1·x[n−1] + B2·x[n−2] − A1·y[n−1] − A2·y[n−2].</summary>
/// <param name="B0">Weight of the present input.</param>
/// <param name="B1">Weight of the input before.</param>
/// <param name="B2">Weight of the input before that.</param>
/// <param name="A1">Weight of the output before.</param>
/// <param name="A2">Weight of the output before that.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct SecondOrderSection(double B0, double B1, double B2, double A1, double A2)
{
    /// <summary>Filters forward, from rest (all zero before the first sample).</summary>
    /// <param name="samples">Any number of samples; replaced by the output.</param>
    /// <remarks>Transposed direct form II, as SciPy's <c>lfilter</c>.</remarks>
    public void FilterInPlace(Span<double> samples)
    {
        double first = 0, second = 0;
        foreach (ref var sample in samples)
        {
            var input = sample;
            var output = (B0 * input) + first;
            first = (B1 * input) - (A1 * output) + second;
            second = (B2 * input) - (A2 * output);
            sample = output;
        }
    }
}
