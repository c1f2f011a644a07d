using System.Collections.Immutable;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Measures;

/// <summary>One baseline level a second: the median of its ten 100 ms means.</summary>
/// <remarks>A plain median of one second of strong muscle activity wanders; means over 100 ms first do not.</remarks>
public sealed class BaselineLevels
{
    private const int Parts = 10;

    private readonly int secondLength;
    private readonly double rateHz;
    private readonly List<double> times = [];
    private readonly List<double> levels = [];

    /// <summary>Starts without levels.</summary>
    /// <param name="secondLength">Samples in a second.</param>
    /// <param name="rateHz">Samples per second, for the times.</param>
    public BaselineLevels(int secondLength, double rateHz)
    {
        this.secondLength = secondLength;
        this.rateHz = rateHz;
    }

    /// <summary>Number of levels.</summary>
    public int Count => levels.Count;

    /// <summary>Midpoints of the seconds, in seconds from time zero.</summary>
    public ImmutableArray<double> Times => [.. times];

    /// <summary>The levels, in the unit of the samples.</summary>
    public ImmutableArray<double> Levels => [.. levels];

    /// <summary>Adds the levels of every full second in consecutive samples; the rest behind them is left out.</summary>
    /// <param name="samples">Samples; the first starts a second.</param>
    /// <param name="offset">Timeline index of the first.</param>
    public void Add(ReadOnlySpan<double> samples, long offset)
    {
        Span<double> means = stackalloc double[Parts];
        for (int start = 0; start + secondLength <= samples.Length; start += secondLength)
        {
            int parts = Math.Min(Parts, secondLength);
            for (int part = 0; part < parts; part++)
            {
                int from = (int)((long)part * secondLength / parts);
                int to = (int)((long)(part + 1) * secondLength / parts);
                means[part] = LaneMean.Of(samples[(start + from)..(start + to)]);
            }

            levels.Add(Quantiles.MedianInPlace(means[..parts]));
            times.Add((offset + start + (0.5 * secondLength)) / rateHz);
        }
    }
}
