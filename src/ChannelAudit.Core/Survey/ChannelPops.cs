using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Survey;

/// <summary>All pops of a channel, counted in windows.</summary>
public sealed class ChannelPops
{
    private const double AroundSeconds = 0.05;

    private readonly Channel channel;
    private readonly List<Pop> pops;
    private readonly List<Pop> locked;

    internal ChannelPops(Channel channel, List<Pop> pops, List<Pop> locked)
    {
        this.channel = channel;
        this.pops = pops;
        this.locked = locked;
        long around = (long)(AroundSeconds * channel.Rate.Value);
        foreach (Pop pop in pops.Concat(locked))
        {
            Places.Add(pop.At - around, pop.At + around + 1);
        }

        foreach (Pop pop in pops)
        {
            PlacesOfPops.Add(pop.At - around, pop.At + around + 1);
        }
    }

    /// <summary>Why no pops could be looked for, or null.</summary>
    public string? NotAssessed => channel.Rate.Value < PopFilter.LeastRateHz
        ? FormattableString.Invariant($"sampled below {PopFilter.LeastRateHz} Hz")
        : null;

    /// <summary>Spikes that came with the stimuli and are no pops.</summary>
    public int Locked => locked.Count;

    /// <summary>The 50 ms on either side of every pop, and of every spike that came with a stimulus.</summary>
    public SampleRanges Places { get; } = new();

    /// <summary>The 50 ms on either side of every pop.</summary>
    public SampleRanges PlacesOfPops { get; } = new();

    /// <summary>The pops of the whole channel.</summary>
    public PopCount All => new(pops.Count, null, null);

    /// <summary>The pops of a window, and what they hold of its energy.</summary>
    /// <param name="recording">Where the samples are read.</param>
    /// <param name="window">The window.</param>
    public PopCount In(Recording recording, Window window)
    {
        Pop[] inside = [.. pops.Where(IsInside)];
        Pop[] spikes = [.. inside.Concat(locked.Where(IsInside)).OrderBy(pop => pop.At)];
        double share = Share(recording, window, inside);
        double withLocked = spikes.Length == inside.Length ? share : Share(recording, window, spikes);
        return new PopCount(inside.Length, share, withLocked, inside.Count(pop => pop.Spectrum is { IsMuscleLike: true }));

        bool IsInside(Pop pop) => pop.At >= window.Start && pop.At < window.End;
    }

    private double Share(Recording recording, Window window, Pop[] inside)
    {
        if (inside.Length == 0)
        {
            return 0;
        }

        long[] places = [.. inside.Select(pop => pop.At)];
        double least = inside.Min(pop => pop.Height);
        double atPops = 0;
        double all = 0;
        foreach (Stretch piece in window.Pieces)
        {
            double[] samples = new double[piece.Length];
            recording.Samples.Read(channel.Index, piece.StoredStart, samples);
            (double one, double of) = PopShare.Energy(samples, piece.Start, places, least, channel.Rate.Value);
            atPops += one;
            all += of;
        }

        return all > 0 ? 100 * atPops / all : 0;
    }
}
