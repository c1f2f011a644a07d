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
    private const int RunSeconds = 16;
    private const double NotchShare = 0.25;
    private const double NotchReachHz = 1;

    // Three bins of one second of noise fall below a quarter of their neighbours once in a dozen; those of eight, once in 100 000 (chi squared).
    private const int LeastNotchSeconds = 8;

    private const double CalmProbability = 0.25;
    private const int BinsTogether = 16;
    private const double MainsReachHz = 2;

    // Room for 60 Hz and the neighbours that its peak is compared with.
    private const double HighestNominalHz = 75;

    private readonly List<long> starts = [];
    private readonly List<double[]> nearMains = [];
    private readonly List<SampledSecond> sampled = [];
    private readonly double[] mean;
    private double[] calm = [];
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
        ImmutableArray<(long Start, long Stored, int Seconds)> places = Places(channel.Stretches, length);
        double[] buffer = new double[length * SegmentBatch.Lanes];
        double[] density = new double[batch.Bins];
        PowerAccumulator power = new(batch.Bins);
        List<float[]> seconds = [];
        foreach ((long start, long stored, int run) in places)
        {
            cancellation.ThrowIfCancellationRequested();
            recording.Samples.Read(channel.Index, stored, buffer.AsSpan(0, run * length));
            batch.Load(0, buffer.AsSpan(0, run * length), length, run);
            power.Add(batch, 0);
            for (int lane = 0; lane < run; lane++)
            {
                sample.sampled.Add(SampledSecond.Of(buffer.AsSpan(lane * length, length)));
                batch.Density(0, lane, density);
                seconds.Add(Array.ConvertAll(density, value => (float)value));
                sample.starts.Add(start + ((long)lane * length));
                sample.nearMains.Add([.. density.AsSpan(0, Math.Min(density.Length, (int)(HighestNominalHz / batch.BinHz)))]);
            }
        }

        if (power.Segments > 0)
        {
            power.Density(batch, sample.mean);
            sample.calm = LowerQuartile(seconds, batch.Bins);
        }

        return sample;
    }

    /// <summary>Extremes and mean of each second.</summary>
    public IReadOnlyList<SampledSecond> Seconds => sampled;

    /// <summary>The median over the bins of a band of the mean density, in unit² per Hz: narrow peaks do not move it. Null without the band or a second.</summary>
    public double? TypicalDensity(double fromHz, double toHz)
    {
        int from = (int)Math.Ceiling(fromHz / binHz);
        int to = Math.Min(mean.Length - 1, (int)Math.Floor(toHz / binHz));
        return starts.Count == 0 || to < from ? null : Quantiles.MedianInPlace(mean.AsSpan(from, to - from + 1).ToArray());
    }

    /// <summary>
    /// The mean over a band of the density that three of four seconds exceed, bin by bin: what is there when nothing moves, contracts or blinks. Null below
    /// eight seconds or without the band.
    /// </summary>
    /// <remarks>
    /// Scaled so that steady noise gives its density: a second's density is exponential, its lower quartile -ln 0.75 of the mean. Bins within 2 Hz of a multiple of 50 or 60 Hz
    /// are left out where others are left: mains stands in every second, and no filter made it.
    /// </remarks>
    /// <param name="fromHz">The lowest frequency.</param>
    /// <param name="toHz">The highest.</param>
    /// <param name="withMains">Whether bins near mains count all the same.</param>
    public double? CalmDensity(double fromHz, double toHz, bool withMains = false)
    {
        int from = (int)Math.Ceiling((fromHz / binHz) - 1e-9);
        int to = Math.Min(mean.Length - 1, (int)Math.Floor((toHz / binHz) + 1e-9));
        if (starts.Count < LeastNotchSeconds || to < from)
        {
            return null;
        }

        int[] bins = [.. Enumerable.Range(from, to - from + 1)];
        int[] clear = [.. bins.Where(bin => withMains || !IsNearMains(bin * binHz))];
        return (2 * clear.Length >= bins.Length ? clear : bins).Average(bin => calm[bin]) / -Math.Log(1 - CalmProbability);
    }

    private static bool IsNearMains(double hz) => IsNear(hz, 50) || IsNear(hz, 60);

    private static bool IsNear(double hz, double mains) => hz > MainsReachHz && Math.Abs(hz - (mains * Math.Round(hz / mains))) <= MainsReachHz;

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

    /// <summary>
    /// Whether a notch filter has taken out a frequency: within 1 Hz less than a quarter of the neighbours' density, in 8 s or more.
    /// </summary>
    public bool HasNotchAt(double hz)
    {
        int center = (int)Math.Round(hz / binHz);
        if (starts.Count < LeastNotchSeconds || center + PeakFloor.Far >= mean.Length || center < PeakFloor.Near)
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

    private static double[] LowerQuartile(List<float[]> seconds, int bins)
    {
        double[] quartile = new double[bins];
        int count = seconds.Count;
        double[] values = new double[BinsTogether * count];
        for (int first = 0; first < bins; first += BinsTogether)
        {
            // Neighbouring bins of a second lie in one cache line.
            int together = Math.Min(BinsTogether, bins - first);
            for (int second = 0; second < count; second++)
            {
                ReadOnlySpan<float> near = seconds[second].AsSpan(first, together);
                for (int i = 0; i < near.Length; i++)
                {
                    values[(i * count) + second] = near[i];
                }
            }

            for (int i = 0; i < together; i++)
            {
                quartile[first + i] = Quantiles.Type7InPlace(values.AsSpan(i * count, count), CalmProbability);
            }
        }

        return quartile;
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

    /// <summary>Up to four whole seconds each that do not overlap; runs of 16 s, thinned out evenly to about 600 s.</summary>
    private static ImmutableArray<(long Start, long Stored, int Seconds)> Places(ImmutableArray<Stretch> stretches, int length)
    {
        List<(long Start, long Stored, int Seconds)> all = [];
        long total = stretches.Sum(stretch => stretch.Length / length / RunSeconds) + stretches.Length;
        long every = Math.Max(1, total * RunSeconds / MostSegments);
        long number = 0;
        foreach (Stretch stretch in stretches)
        {
            long seconds = stretch.Length / length;
            for (long second = 0; second < seconds; second += SegmentBatch.Lanes)
            {
                if (number++ / (RunSeconds / SegmentBatch.Lanes) % every == 0)
                {
                    int run = (int)Math.Min(SegmentBatch.Lanes, seconds - second);
                    all.Add((stretch.Start + (second * length), stretch.StoredStart + (second * length), run));
                }
            }
        }

        return [.. all];
    }
}
