using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Measures;

/// <summary>Counts samples by value, so that quantiles of a long stretch need no copy of it.</summary>
/// <remarks>
/// Exact for up to 65 536 different codes (16-bit files); finer codes are counted in groups of a power of two, 1/65 536 of the range at
/// worst, which no percentage shows.
/// </remarks>
public sealed class CodeHistogram
{
    private const int Bins = 65536;

    private readonly int[] counts = new int[Bins + 1];
    private readonly double origin;
    private readonly double width;
    private int low = int.MaxValue;
    private int high = -1;

    /// <summary>Makes an empty histogram.</summary>
    /// <param name="least">The least value that can occur.</param>
    /// <param name="greatest">The greatest.</param>
    /// <param name="step">The step between values.</param>
    public CodeHistogram(double least, double greatest, double step)
    {
        origin = least;
        width = step > 0 ? step : Math.Max((greatest - least) / Bins, double.Epsilon);
        while ((greatest - least) / width > Bins)
        {
            width *= 2;
        }
    }

    /// <summary>Samples counted.</summary>
    public long Total { get; private set; }

    /// <summary>Adds samples.</summary>
    public void Add(ReadOnlySpan<double> samples)
    {
        if (samples.IsEmpty)
        {
            return;
        }

        (double least, double greatest) = Extremes.Of(samples);
        Add(samples, least, greatest);
    }

    /// <summary>Adds samples whose extremes are known.</summary>
    /// <param name="samples">The samples.</param>
    /// <param name="least">The least of them.</param>
    /// <param name="greatest">The greatest of them.</param>
    /// <exception cref="ArgumentOutOfRangeException">When one lies outside the range.</exception>
    public void Add(ReadOnlySpan<double> samples, double least, double greatest)
    {
        low = Math.Min(low, BinOf(least));
        high = Math.Max(high, BinOf(greatest));
        if (BinOf(least) < 0 || BinOf(greatest) > Bins)
        {
            throw new ArgumentOutOfRangeException(nameof(samples), "a value lies outside the range of the histogram");
        }

        double perWidth = 1 / width;
        double half = 0.5 - (origin * perWidth);
        int done = AddLanes(samples, perWidth, half);
        foreach (double sample in samples[done..])
        {
            counts[(int)((sample * perWidth) + half)]++;
        }

        Total += samples.Length;
    }

    /// <summary>Forgets all samples.</summary>
    public void Clear()
    {
        if (high >= low)
        {
            counts.AsSpan(low, high - low + 1).Clear();
        }

        low = int.MaxValue;
        high = -1;
        Total = 0;
    }

    /// <summary>The median (type 7, the mean of the middle two).</summary>
    /// <exception cref="InvalidOperationException">When nothing was counted.</exception>
    public double Median()
    {
        ThrowIfEmpty();
        return 0.5 * (ValueAtRank((Total - 1) / 2) + ValueAtRank(Total / 2));
    }

    /// <summary>A quantile of the distance from a level (type 7).</summary>
    /// <param name="level">The level.</param>
    /// <param name="probability">0 to 1; close to 1 is quick.</param>
    /// <exception cref="InvalidOperationException">When nothing was counted.</exception>
    public double DistanceQuantile(double level, double probability)
    {
        ThrowIfEmpty();
        double position = (Total - 1) * probability;
        long lowerRank = (long)position;
        double lower = DistanceAtRank(level, lowerRank);
        double upper = lowerRank + 1 < Total ? DistanceAtRank(level, lowerRank + 1) : lower;
        return lower + ((position - lowerRank) * (upper - lower));
    }

    /// <summary>Four samples at a time by the same steps as one at a time; gives how many were counted.</summary>
    private int AddLanes(ReadOnlySpan<double> samples, double perWidth, double half)
    {
        if (!Avx.IsSupported)
        {
            return 0;
        }

        ReadOnlySpan<Vector256<double>> lanes = MemoryMarshal.Cast<double, Vector256<double>>(samples);
        (Vector256<double> scale, Vector256<double> offset) = (Vector256.Create(perWidth), Vector256.Create(half));
        foreach (Vector256<double> lane in lanes)
        {
            Vector128<int> bins = Avx.ConvertToVector128Int32WithTruncation((lane * scale) + offset);
            counts[bins[0]]++;
            counts[bins[1]]++;
            counts[bins[2]]++;
            counts[bins[3]]++;
        }

        return lanes.Length * Vector256<double>.Count;
    }

    private int BinOf(double value)
    {
        double perWidth = 1 / width;
        return (int)((value * perWidth) + (0.5 - (origin * perWidth)));
    }

    private double ValueOf(int bin) => origin + (bin * width);

    private double ValueAtRank(long rank)
    {
        long seen = 0;
        for (int bin = low; bin < high; bin++)
        {
            seen += counts[bin];
            if (seen > rank)
            {
                return ValueOf(bin);
            }
        }

        return ValueOf(high);
    }

    /// <summary>Comes in from both ends, always from the one farther from the level, until the rank is reached.</summary>
    private double DistanceAtRank(double level, long rank)
    {
        long above = Total - 1 - rank;
        int left = low;
        int right = high;
        while (true)
        {
            bool takeRight = ValueOf(right) - level >= level - ValueOf(left);
            int bin = takeRight ? right : left;
            if (counts[bin] > above || left == right)
            {
                return Math.Abs(ValueOf(bin) - level);
            }

            above -= counts[bin];
            right -= takeRight ? 1 : 0;
            left += takeRight ? 0 : 1;
        }
    }

    private void ThrowIfEmpty()
    {
        if (Total == 0)
        {
            throw new InvalidOperationException("nothing was counted");
        }
    }
}
