using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ChannelAudit.Signals.Filters;

/// <summary>A high-pass that has been on for ever: it starts settled on its first sample, so that an offset makes no step.</summary>
/// <remarks>
/// Long runs are cut into four parts that are filtered side by side; each part starts half a second early, settled on what is there, which leaves of
/// its start less than 1E-15 behind a corner of 20 Hz. The parts depend on lengths only: the same input gives the same bits everywhere.
/// </remarks>
public static class SettledHighPass
{
    private const int Lanes = 4;

    /// <summary>Filters samples.</summary>
    /// <param name="filter">A section whose numerator sums to 0, as that of <see cref="Butterworth.HighPass"/>.</param>
    /// <param name="samples">First <paramref name="carry"/> samples that only warm the filter up, then those that are wanted.</param>
    /// <param name="carry">Samples to warm up on; 0 at the start of a stretch.</param>
    /// <param name="output">Takes the wanted samples filtered.</param>
    /// <exception cref="ArgumentException">When the output has another length.</exception>
    public static void Filter(in SecondOrderSection filter, ReadOnlySpan<double> samples, int carry, Span<double> output)
    {
        int wanted = samples.Length - carry;
        if (output.Length != wanted)
        {
            throw new ArgumentException("one output a wanted sample", nameof(output));
        }

        if (carry == 0 || wanted < Lanes * carry)
        {
            One(filter, samples, carry, output);
            return;
        }

        int part = wanted / Lanes;
        Four(filter, samples, carry, part, output);
        int done = Lanes * part;
        if (done < wanted)
        {
            One(filter, samples[done..], carry, output[done..]);
        }
    }

    private static void One(in SecondOrderSection filter, ReadOnlySpan<double> samples, int carry, Span<double> output)
    {
        if (samples.IsEmpty)
        {
            return;
        }

        double before = samples[0], before2 = samples[0], last = 0, last2 = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            double sample = samples[i];
            double value = (filter.B0 * sample) + (filter.B1 * before) + (filter.B2 * before2) - (filter.A2 * last2) - (filter.A1 * last);
            (before2, before, last2, last) = (before, sample, last, value);
            if (i >= carry)
            {
                output[i - carry] = value;
            }
        }
    }

    private static void Four(in SecondOrderSection filter, ReadOnlySpan<double> samples, int carry, int part, Span<double> output)
    {
        Vector256<double> b0 = Vector256.Create(filter.B0), b1 = Vector256.Create(filter.B1), b2 = Vector256.Create(filter.B2);
        Vector256<double> a1 = Vector256.Create(filter.A1), a2 = Vector256.Create(filter.A2);
        ref double source = ref MemoryMarshal.GetReference(samples);
        Vector256<double> before = At(ref source, 0, part), before2 = before;
        Vector256<double> last = Vector256<double>.Zero, last2 = last;
        for (int i = 0; i < carry + part; i++)
        {
            Vector256<double> sample = At(ref source, i, part);

            // The last output comes in last: all else is ready while it is still being worked out.
            Vector256<double> value = (((b0 * sample) + (b1 * before) + (b2 * before2)) - (a2 * last2)) - (a1 * last);
            (before2, before, last2, last) = (before, sample, last, value);
            if (i >= carry)
            {
                int at = i - carry;
                output[at] = value[0];
                output[at + part] = value[1];
                output[at + (2 * part)] = value[2];
                output[at + (3 * part)] = value[3];
            }
        }
    }

    // Lane k reads samples from k parts on: the carry of the run serves the first lane, the part before serves the others.
    private static Vector256<double> At(ref double source, int index, int part) => Vector256.Create(
        Unsafe.Add(ref source, index),
        Unsafe.Add(ref source, index + part),
        Unsafe.Add(ref source, index + (2 * part)),
        Unsafe.Add(ref source, index + (3 * part)));
}
