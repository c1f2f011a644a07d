namespace ChannelAudit.Recordings.Text;

/// <summary>Measures the steps of a spooled time column in two passes, block by block.</summary>
internal static class TimeSteps
{
    private const int BlockRows = 4096;

    /// <summary>A step of more than so many median steps is a gap.</summary>
    private const double GapSteps = 1.5;

    /// <summary>The median step, as the median of the medians of blocks of 4096 rows; in the column's own unit.</summary>
    public static double Median(SampleSpool spool, int column)
    {
        List<double> medians = [];
        double[] times = new double[BlockRows + 1];
        for (long row = 0; row < spool.Rows - 1; row += BlockRows)
        {
            int length = (int)Math.Min(BlockRows + 1, spool.Rows - row);
            spool.Read(column, row, times.AsSpan(0, length));
            for (int i = 0; i < length - 1; i++)
            {
                times[i] = times[i + 1] - times[i];
            }

            Array.Sort(times, 0, length - 1);
            medians.Add(times[(length - 1) / 2]);
        }

        medians.Sort();
        return medians[medians.Count / 2];
    }

    /// <summary>Measures the steps and finds the gaps.</summary>
    /// <param name="spool">The spool.</param>
    /// <param name="column">Its time column.</param>
    /// <param name="scale">Seconds for one unit of the column.</param>
    /// <param name="medianS">The median step in s.</param>
    /// <param name="mostGaps">Beyond so many gaps no more are kept: the times are then irregular anyway.</param>
    public static TimeStep Measure(SampleSpool spool, int column, double scale, double medianS, long mostGaps)
    {
        List<long> gaps = [];
        double sum = 0;
        double squares = 0;
        double least = double.PositiveInfinity;
        double most = 0;
        long count = 0;
        long odd = 0;
        foreach ((long row, ReadOnlyMemory<double> block) in Walk(spool, column, scale))
        {
            ReadOnlySpan<double> steps = block.Span;
            for (int i = 0; i + 1 < steps.Length; i++)
            {
                double step = steps[i];
                least = Math.Min(least, step);
                odd += step < 0.5 * medianS ? 1 : 0;
                if (IsGap(step, steps[i + 1], medianS))
                {
                    odd++;
                    if (gaps.Count <= mostGaps)
                    {
                        gaps.Add(row + i);
                    }

                    continue;
                }

                // Around the median: sums of squares stay exact enough over days.
                double off = step - medianS;
                sum += off;
                squares += off * off;
                most = Math.Max(most, step);
                count++;
            }
        }

        double mean = medianS + (count == 0 ? 0 : sum / count);
        double variance = count < 2 ? 0 : Math.Max(0, (squares - (sum * sum / count)) / (count - 1));
        return new TimeStep(mean, Math.Sqrt(variance), least, most, mean * count, odd, gaps);
    }

    /// <summary>The furthest that a sample lies from the time that a rate and the stretches give it, in s.</summary>
    public static double LargestDeviation(SampleSpool spool, int column, double scale, Rational rate, IReadOnlyList<RowStart> starts)
    {
        double worst = 0;
        double time = 0;
        int at = 0;
        foreach ((long first, ReadOnlyMemory<double> block) in Walk(spool, column, scale))
        {
            ReadOnlySpan<double> steps = block.Span;
            for (int i = 0; i + 1 < steps.Length; i++)
            {
                time += steps[i];
                long row = first + i;
                while (at + 1 < starts.Count && starts[at + 1].Row <= row)
                {
                    at++;
                }

                worst = Math.Max(worst, Math.Abs(time - rate.SecondsAt(starts[at].Timeline + row - starts[at].Row)));
            }
        }

        return worst;
    }

    // A late stamp is followed by a short step that makes up for it; missing samples are not.
    private static bool IsGap(double step, double next, double medianS) =>
        step > GapSteps * medianS && !(next < 0.75 * medianS && step + next < (1 + GapSteps) * medianS);

    /// <summary>The steps of each block with the row behind the first of them, and one step more to look ahead at: infinite behind the last.</summary>
    private static IEnumerable<(long Row, ReadOnlyMemory<double> Steps)> Walk(SampleSpool spool, int column, double scale)
    {
        double[] times = new double[BlockRows + 2];
        for (long row = 1; row < spool.Rows; row += BlockRows)
        {
            int length = (int)Math.Min(BlockRows + 2, spool.Rows - row + 1);
            spool.Read(column, row - 1, times.AsSpan(0, length));
            for (int i = 0; i + 1 < length; i++)
            {
                times[i] = (times[i + 1] - times[i]) * scale;
            }

            bool hasNext = length == BlockRows + 2;
            times[length - 1] = double.PositiveInfinity;
            yield return (row, times.AsMemory(0, hasNext ? BlockRows + 1 : length));
        }
    }
}
