using System.Buffers;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Filters;

namespace ChannelAudit.Survey;

/// <summary>Finds the pops of a whole channel: reads again what the screen left over, a few seconds at a time.</summary>
internal sealed class PopFinder
{
    private const double PartSeconds = 10;
    private const double AroundSeconds = 1;
    private const double RefractorySeconds = 0.05;

    private readonly Recording recording;
    private readonly Channel channel;
    private readonly double rateHz;
    private readonly double leastHeight;
    private readonly EmgBand band;
    private readonly List<Spike> spikes = [];
    private long latest = long.MinValue / 2;

    private PopFinder(Recording recording, Channel channel, double leastHeight)
    {
        this.recording = recording;
        this.channel = channel;
        rateHz = channel.Rate.Value;
        band = EmgBand.Of(channel);
        this.leastHeight = leastHeight;
    }

    /// <summary>The pops of a channel in order of time.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">The channel.</param>
    /// <param name="screen">What its samples went through; null where it is sampled too slowly.</param>
    /// <param name="cancellation">Checked for every part.</param>
    public static List<Pop> Find(Recording recording, Channel channel, PopScreen? screen, CancellationToken cancellation)
    {
        if (screen is null)
        {
            return [];
        }

        PopFinder finder = new(recording, channel, screen.LeastHeight);
        long part = (long)(PartSeconds * finder.rateHz);
        foreach ((long from, long to) in screen.Places().All)
        {
            Stretch stretch = channel.Stretches.First(one => one.Start <= from && from < one.End);
            for (long start = from; start < Math.Min(to, stretch.End); start += part)
            {
                cancellation.ThrowIfCancellationRequested();
                finder.Look(stretch, start, Math.Min(start + part, Math.Min(to, stretch.End)));
            }
        }

        return UnitFamilies.Without(finder.spikes, finder.rateHz);
    }

    /// <summary>Looks for pops between two samples of a stretch, with a second on either side and half a second to warm up the filter.</summary>
    private void Look(Stretch stretch, long from, long to)
    {
        long around = (long)Math.Ceiling(AroundSeconds * rateHz);
        long first = Math.Max(stretch.Start, from - around);
        long last = Math.Min(stretch.End, to + around);
        int carry = (int)Math.Min(PopFilter.WarmUp(rateHz), first - stretch.Start);
        int length = (int)(last - first);
        double[] samples = ArrayPool<double>.Shared.Rent(carry + length);
        double[] passed = ArrayPool<double>.Shared.Rent(length);
        try
        {
            Span<double> read = samples.AsSpan(0, carry + length);
            recording.Samples.Read(channel.Index, stretch.StoredStart + (first - carry - stretch.Start), read);
            SettledHighPass.Filter(PopFilter.At(rateHz), read, carry, passed.AsSpan(0, length));
            Collect(passed.AsSpan(0, length), first, from, to);
        }
        finally
        {
            ArrayPool<double>.Shared.Return(samples);
            ArrayPool<double>.Shared.Return(passed);
        }
    }

    private void Collect(ReadOnlySpan<double> passed, long first, long from, long to)
    {
        PopShape shape = new(passed, rateHz);
        MotorUnits units = new(passed, rateHz);
        long refractory = (long)(RefractorySeconds * rateHz);
        for (long at = from; at < to; at++)
        {
            int top = (int)(at - first);
            if (at >= latest + refractory && shape.IsSpike(top, leastHeight, out double scale))
            {
                bool isOfTrain = units.Hold(top, scale);
                (int alike, int turned) = units.Kin(top, scale);
                Pop pop = new(at, Math.Abs(passed[top]), SpikeSpectrum.Of(passed, top, rateHz, band));
                spikes.Add(new Spike(pop, units.NearShape(top).ToArray(), units.WideShape(top).ToArray(), isOfTrain, alike, turned));
                latest = isOfTrain ? latest : at;
            }
        }
    }
}
