using System.Collections.Immutable;

namespace ChannelAudit.Signals.Filters;

/// <summary>Sections one after the other, and the magnitude of what comes out; block by block.</summary>
/// <remarks>It starts settled on the first sample of each piece, so that an offset makes no step: the first section must be a high-pass.</remarks>
public sealed class RectifiedFilter
{
    private readonly ImmutableArray<SecondOrderSection> sections;
    private readonly double[] states;
    private bool isFresh = true;

    /// <summary>Prepares to filter.</summary>
    /// <param name="sections">At least one; the first one's numerator sums to 0.</param>
    /// <exception cref="ArgumentException">When there is none.</exception>
    public RectifiedFilter(ImmutableArray<SecondOrderSection> sections)
    {
        if (sections.IsEmpty)
        {
            throw new ArgumentException("one section at least", nameof(sections));
        }

        this.sections = sections;
        states = new double[4 * sections.Length];
    }

    /// <summary>Forgets what was: the next sample starts a piece.</summary>
    public void Restart() => isFresh = true;

    /// <summary>Filters the next block and rectifies it.</summary>
    /// <param name="samples">The block.</param>
    /// <param name="output">Takes the magnitudes; as long as the block.</param>
    /// <returns>Their sum.</returns>
    /// <exception cref="ArgumentException">When the output has another length.</exception>
    public double Filter(ReadOnlySpan<double> samples, Span<double> output)
    {
        if (output.Length != samples.Length)
        {
            throw new ArgumentException("one output a sample", nameof(output));
        }

        if (samples.IsEmpty)
        {
            return 0;
        }

        if (isFresh)
        {
            states.AsSpan().Clear();
            (states[0], states[1]) = (samples[0], samples[0]);
            isFresh = false;
        }

        double sum = 0;
        for (int i = 0; i < sections.Length; i++)
        {
            sum = Run(sections[i], i == 0 ? samples : output, output, states.AsSpan(4 * i, 4), i + 1 == sections.Length);
        }

        return sum;
    }

    /// <summary>Runs a section; the last one gives magnitudes, and their sum costs nothing while it waits for its own output.</summary>
    private static double Run(in SecondOrderSection section, ReadOnlySpan<double> samples, Span<double> output, Span<double> state, bool isLast)
    {
        double before = state[0], before2 = state[1], last = state[2], last2 = state[3];
        double sum = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            double sample = samples[i];

            // The last output comes in last: all else is ready while it is still being worked out.
            double value = (section.B0 * sample) + (section.B1 * before) + (section.B2 * before2) - (section.A2 * last2) - (section.A1 * last);
            (before2, before, last2, last) = (before, sample, last, value);
            double magnitude = Math.Abs(value);
            sum += magnitude;
            output[i] = isLast ? magnitude : value;
        }

        (state[0], state[1], state[2], state[3]) = (before, before2, last, last2);
        return sum;
    }
}
