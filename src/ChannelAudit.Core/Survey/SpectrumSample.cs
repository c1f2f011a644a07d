using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Spectra;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>One-second spectra of one channel, spread evenly over the recording: enough to name the mains and to see a notch.</summary>
public sealed class SpectrumSample
{
    private const int MostSegments = 600;
    private const double NotchShare = 0.25;
    private const double NotchReachHz = 1;

    private readonly List<long> starts = [];
    private readonly List<double[]> nearMains = [];
    private readonly double[] mean;
    private readonly double binHz;

    private SpectrumSample(int bins, double binHz)
    {
        mean = new double[bins];
        this.binHz = binHz;
    }

    /// <summary>Spectra of a channel; without any when it has no unbroken second.</summary>
    public static SpectrumSample Of(Recording recording, Channel channel, CancellationToken cancellation)
    {
        int length = SpectralFrame.SegmentLengthOf(channel.Rate);
        SegmentBatch batch = new(channel.Rate.Value, length, 1);
        SpectrumSample sample = new(batch.Bins, batch.BinHz);
        ImmutableArray<(long Start, long Stored)> places = Places(channel.Stretches, length);
        double[] buffer = new double[length];
        double[] density = new double[batch.Bins];
        PowerAccumulator power = new(batch.Bins);
        foreach ((long start, long stored) in places)
        {
            cancellation.ThrowIfCancellationRequested();
            recording.Samples.Read(channel.Index, stored, buffer);
            batch.Load(0, buffer, length, 1);
            batch.Density(0, 0, density);
            power.Add(batch, 0);
            sample.starts.Add(start);
            sample.nearMains.Add([.. density.AsSpan(0, Math.Min(density.Length, (int)(75 / batch.BinHz)))]);
        }

        if (power.Segments > 0)
        {
            power.Density(batch, sample.mean);
        }

        return sample;
    }

    /// <summary>The peak at a frequency over its neighbours in the mean spectrum; null when the rate is too low for it.</summary>
    public double? Prominence(double hz) => starts.Count == 0 ? null : Prominence(mean, hz);

    /// <summary>Where the peak at a frequency stands out most, as a timeline index.</summary>
    public long StrongestAt(double hz)
    {
        double best = -1;
        long place = 0;
        for (int i = 0; i < starts.Count; i++)
        {
            if (Prominence(nearMains[i], hz) is { } prominence && prominence > best)
            {
                best = prominence;
                place = starts[i];
            }
        }

        return place;
    }

    /// <summary>Whether a notch filter has taken out a frequency: within 1 Hz less than a quarter of the neighbours' density.</summary>
    public bool HasNotchAt(double hz)
    {
        int center = (int)Math.Round(hz / binHz);
        if (starts.Count == 0 || center + PeakFloor.Far >= mean.Length || center < PeakFloor.Near)
        {
            return false;
        }

        int reach = Math.Max(1, (int)Math.Floor(NotchReachHz / binHz));
        double inside = 0;
        for (int bin = center - reach; bin <= center + reach; bin++)
        {
            inside += mean[bin] / ((2 * reach) + 1);
        }

        return inside < NotchShare * PeakFloor.At(mean, center, PeakFloor.MedianBias(starts.Count));
    }

    private double? Prominence(double[] density, double hz)
    {
        int center = (int)Math.Round(hz / binHz);
        if (center + LineWindow.Reach >= density.Length || center < 1)
        {
            return null;
        }

        double peak = Math.Max(density[center - 1], Math.Max(density[center], density[center + 1]));
        double floor = PeakFloor.At(density, center, 1);
        return floor > 0 ? peak / floor : 0;
    }

    /// <summary>Whole seconds that do not overlap, thinned out evenly to at most 600.</summary>
    private static ImmutableArray<(long Start, long Stored)> Places(ImmutableArray<Stretch> stretches, int length)
    {
        long total = stretches.Sum(stretch => stretch.Length / length);
        long wanted = Math.Min(MostSegments, total);
        ImmutableArray<(long Start, long Stored)>.Builder places = ImmutableArray.CreateBuilder<(long Start, long Stored)>();
        long before = 0;
        foreach (Stretch stretch in stretches)
        {
            long here = stretch.Length / length;
            while (places.Count < wanted && places.Count * total / wanted < before + here)
            {
                long second = (places.Count * total / wanted) - before;
                places.Add((stretch.Start + (second * length), stretch.StoredStart + (second * length)));
            }

            before += here;
        }

        return places.DrainToImmutable();
    }
}
