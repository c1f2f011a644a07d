namespace ChannelAudit.Signals.Trends;

/// <summary>The change that fits a series best: a step, a ramp between two levels, or an episode.</summary>
/// <remarks>
/// Weighted least squares over all places of the two corners, of a long series first some forty of them and then those around the best. A ramp is y = a + b·min(1, max(0, (t − t_1)/(t_2 − t_1))), with t_1 = t_2 a step; an episode is y = a + b while
/// t_1 ≤ t &lt; t_2. Both have two corners and two levels. An episode is taken only where it explains more than the ramp by nine times the variance that is left, which is three standard
/// errors: else a few weeks at an end would make one of every change that stays.
/// </remarks>
/// <param name="Kind">What kind.</param>
/// <param name="From">Position of the first corner: the first block of the new level, of a ramp the last of the old one.</param>
/// <param name="To">Position of the second corner: of an episode the first block after it, of a ramp the first of the new level; of a step that of <paramref name="From"/>.</param>
/// <param name="Before">a, the level without the change.</param>
/// <param name="Change">b, what is added to it.</param>
/// <param name="Explained">Weighted sum of squares that the shape takes away from that about the mean.</param>
public sealed record ChangeShape(ChangeKind Kind, int From, int To, double Before, double Change, double Explained)
{
    /// <summary>Fewest blocks on either side of a corner, and of an episode.</summary>
    public const int LeastBlocks = 4;

    /// <summary>A ramp over no longer than this, in the unit of the times, is a step.</summary>
    private const double StepWithin = 6;

    private const int CoarsePlaces = 40;
    private const int Parameters = 4;
    private const double Clearly = 9;

    /// <summary>The level of a block.</summary>
    /// <param name="block">Its position.</param>
    /// <param name="times">Times of the blocks that it was fitted to.</param>
    public double LevelAt(int block, ReadOnlySpan<double> times)
    {
        var isInside = block >= From && (Kind != ChangeKind.Episode || block < To);
        var course = Kind == ChangeKind.Episode || To == From
            ? isInside ? 1.0 : 0.0
            : Math.Clamp((times[block] - times[From]) / (times[To] - times[From]), 0, 1);
        return Before + (Change * course);
    }

    /// <summary>Fits the shapes.</summary>
    /// <param name="times">Rising times of the blocks, in weeks; left as they are.</param>
    /// <param name="values">A finite value a block.</param>
    /// <param name="weights">Its weight, above 0.</param>
    /// <exception cref="ArgumentException">Lengths differ, or there are fewer than twice <see cref="LeastBlocks"/> blocks.</exception>
    public static ChangeShape Of(ReadOnlySpan<double> times, ReadOnlySpan<double> values, ReadOnlySpan<double> weights)
    {
        Lengths.RequireExactly(values.Length, times.Length, nameof(values));
        Lengths.RequireExactly(weights.Length, times.Length, nameof(weights));
        Lengths.RequireAtLeast(times.Length, 2 * LeastBlocks, nameof(times));
        var (lasting, passing) = (Nothing(ChangeKind.Step), Nothing(ChangeKind.Episode));
        var course = new double[times.Length];
        var stride = Math.Max(1, times.Length / CoarsePlaces);
        var last = times.Length - LeastBlocks;
        for (var from = LeastBlocks; from <= last; from += stride)
        {
            // A ramp may go on to the end of the series; an episode must be over, and be one.
            for (var to = from; to < times.Length; to += stride)
            {
                lasting = Better(lasting, Ramp(times, from, to, course), values, weights, course);
                passing = to <= last ? Better(passing, Episode(from, to, course), values, weights, course) : passing;
            }
        }

        var (coarseLasting, coarsePassing) = (lasting, passing);
        for (var from = -stride; from <= stride && stride > 1; from++)
        {
            for (var to = -stride; to <= stride; to++)
            {
                var start = Math.Clamp(coarseLasting.From + from, LeastBlocks, last);
                lasting = Better(lasting, Ramp(times, start, Math.Clamp(coarseLasting.To + to, start, times.Length - 1), course), values, weights, course);
                start = Math.Clamp(coarsePassing.From + from, LeastBlocks, last);
                passing = Better(passing, Episode(start, Math.Clamp(coarsePassing.To + to, start, last), course), values, weights, course);
            }
        }

        return passing.Explained - lasting.Explained > Clearly * (Total(values, weights) - passing.Explained) / (times.Length - Parameters) ? passing : lasting;
    }

    private static ChangeShape Nothing(ChangeKind kind) => new(kind, LeastBlocks, LeastBlocks, 0, 0, 0);

    private static double Total(ReadOnlySpan<double> values, ReadOnlySpan<double> weights)
    {
        double weight = 0, sum = 0, square = 0;
        for (var i = 0; i < values.Length; i++)
        {
            weight += weights[i];
            sum += weights[i] * values[i];
            square += weights[i] * values[i] * values[i];
        }

        return square - (sum * sum / weight);
    }

    // One that is too short has an empty course, which explains nothing.
    private static (ChangeKind Kind, int From, int To) Episode(int from, int to, double[] course)
    {
        course.AsSpan().Clear();
        course.AsSpan(from, to - from).Fill(to - from >= LeastBlocks ? 1 : 0);
        return (ChangeKind.Episode, from, to);
    }

    private static (ChangeKind Kind, int From, int To) Ramp(ReadOnlySpan<double> times, int from, int to, double[] course)
    {
        var length = times[to] - times[from];
        for (var i = 0; i < course.Length; i++)
        {
            course[i] = to == from ? i < from ? 0 : 1 : Math.Clamp((times[i] - times[from]) / length, 0, 1);
        }

        return (length <= StepWithin ? ChangeKind.Step : ChangeKind.Drift, from, to);
    }

    private static ChangeShape Better(
        ChangeShape best, (ChangeKind Kind, int From, int To) shape, ReadOnlySpan<double> values, ReadOnlySpan<double> weights, double[] course)
    {
        double weight = 0, x = 0, y = 0;
        for (var i = 0; i < course.Length; i++)
        {
            weight += weights[i];
            x += weights[i] * course[i];
            y += weights[i] * values[i];
        }

        var (meanX, meanY) = (x / weight, y / weight);
        double xx = 0, xy = 0;
        for (var i = 0; i < course.Length; i++)
        {
            var across = weights[i] * (course[i] - meanX);
            xx += across * (course[i] - meanX);
            xy += across * (values[i] - meanY);
        }

        if (xx <= 0 || xy * xy / xx <= best.Explained)
        {
            return best;
        }

        var change = xy / xx;
        return new ChangeShape(shape.Kind, shape.From, shape.To, meanY - (change * meanX), change, xy * change);
    }
}
