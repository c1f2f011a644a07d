using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Survey;

/// <summary>Whether a spike comes again at another time, hidden in the muscle or not.</summary>
/// <remarks>
/// Fitted to the samples there by least squares, at every shift within a tolerance: what couples in from outside comes with the same sign and size whatever the
/// muscle does, so half to twice its size is the spike again. Of a muscle as loud as a pop lets it be, a fifth of its height, that is two standard deviations
/// and a half, seldom by chance. Engineering judgement.
/// </remarks>
internal sealed class SpikeRepeats
{
    private const double ReachSeconds = 0.005;
    private const double LeastSize = 0.5;
    private const double MostSize = 2;

    private readonly Recording recording;
    private readonly Channel channel;
    private readonly int tolerance;
    private readonly int reach;

    /// <summary>Looks at a channel.</summary>
    /// <param name="recording">Its recording.</param>
    /// <param name="channel">The channel.</param>
    /// <param name="tolerance">Samples that the spike may come earlier or later.</param>
    public SpikeRepeats(Recording recording, Channel channel, int tolerance)
    {
        (this.recording, this.channel, this.tolerance) = (recording, channel, tolerance);
        reach = (int)Math.Round(ReachSeconds * channel.Rate.Value);
    }

    /// <summary>Whether the spike at one sample is there at another as well; not where samples are missing.</summary>
    public bool Has(long spike, long there)
    {
        double[] shape = Read(spike, reach);
        double[] samples = Read(there, reach + tolerance);
        if (shape.Length == 0 || samples.Length == 0)
        {
            return false;
        }

        double mean = LaneMean.Of(shape);
        double energy = 0;
        for (int i = 0; i < shape.Length; i++)
        {
            shape[i] -= mean;
            energy += shape[i] * shape[i];
        }

        double best = 0;
        for (int shift = 0; shift + shape.Length <= samples.Length; shift++)
        {
            double both = 0;
            for (int i = 0; i < shape.Length; i++)
            {
                both += shape[i] * samples[shift + i];
            }

            best = Math.Max(best, both);
        }

        return best >= LeastSize * energy && best <= MostSize * energy;
    }

    private double[] Read(long middle, int around)
    {
        Window window = Window.Of(channel.Stretches, middle - around, middle + around + 1);
        if (window.Pieces.Length != 1 || window.Stored != window.Length)
        {
            return [];
        }

        double[] samples = new double[window.Length];
        recording.Samples.Read(channel.Index, window.Pieces[0].StoredStart, samples);
        return samples;
    }
}
