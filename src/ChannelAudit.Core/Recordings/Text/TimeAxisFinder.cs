using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Recordings.Text;

/// <summary>Finds rate and gaps from a spooled time column.</summary>
/// <remarks>
/// The rate is one over the mean of the steps that are no gaps, taken to the nearest nice number that the digits of the printed times allow. A step of more
/// than 1.5 median steps is a gap unless the next one makes up for it.
/// </remarks>
internal sealed class TimeAxisFinder(string file, SpooledTable table, ColumnPlan plan, WarningList warnings)
{
    private const double MostOddShare = 0.1;
    private const double CoarseDigit = 0.4;
    private const double MostGapShareWhenCoarse = 0.01;
    private const double LeastTolerance = 1e-7;
    private const double MostDeviationS = 0.5;
    private const int GapsShown = 5;

    // Beyond this doubles are no indices; a recording that long is refused.
    private const double MostIndex = 1L << 53;

    private readonly TimeCells _times = table.Times!;
    private readonly int _column = table.SpoolColumns[plan.Position];

    /// <summary>Finds the axis of a time column.</summary>
    /// <param name="stated">A rate that the preamble or the setup states, and who says so; null when none.</param>
    /// <exception cref="ChannelAuditException">When no rate holds.</exception>
    public TimeAxis FromTimes((decimal RateHz, string Source)? stated)
    {
        if (table.Spool.Rows < 2)
        {
            throw TextErrors.TooShort(file);
        }

        double median = TimeSteps.Median(table.Spool, _column);
        double scale = SecondsPerUnit(median);
        double digitS = Math.Pow(10, -_times.Decimals) * scale;
        TimeStep step = TimeSteps.Measure(table.Spool, _column, scale, median * scale, table.Spool.Rows / 5);
        RefuseIrregular(step, digitS);
        if (1 / step.MeanS is not (>= RecordingBounds.LeastRateHz and <= RecordingBounds.MostRateHz))
        {
            throw TextErrors.BadRate(file, 1 / step.MeanS);
        }

        bool jitters = Math.Max(step.MostS - step.MeanS, step.MeanS - step.LeastS) > Math.Max(1.5 * digitS, 0.05 * step.MeanS);
        double tolerance = Math.Max(LeastTolerance, (Math.Max(digitS, jitters ? step.SdS : 0) * (step.GapRows.Count + 1)) / step.SpanS);
        Rational rate = Decide(1 / step.MeanS, tolerance, stated);
        ImmutableArray<RowStart> starts = Starts(step.GapRows, rate, scale);
        double deviation = TimeSteps.LargestDeviation(table.Spool, _column, scale, rate, starts);
        if (deviation > MostDeviationS)
        {
            throw TextErrors.Irregular(file, plan.RawLabel, string.Create(CultureInfo.InvariantCulture, $"at a mean of {1 / step.MeanS:G6} Hz samples lie up to {deviation:G3} s from their time"));
        }

        WarnOfStart(scale, step.MeanS);
        WarnOfJitter(step, jitters, deviation);
        WarnOfGaps(step.GapRows, starts);
        return new TimeAxis(rate, starts);
    }

    /// <summary>Finds the axis of a counter: as <see cref="FromTimes"/>, with a step of one sample.</summary>
    public TimeAxis FromCounter(Rational rate)
    {
        List<RowStart> starts = [new RowStart(0, 0)];
        List<long> gaps = [];
        Span<double> pair = stackalloc double[1];
        TimeStep step = TimeSteps.Measure(table.Spool, _column, 1, 1, table.Spool.Rows / 5);
        RefuseIrregular(step, 0);
        foreach (long row in step.GapRows)
        {
            table.Spool.Read(_column, row, pair);
            starts.Add(new RowStart(row, (long)Math.Min(Math.Round(pair[0]), MostIndex)));
            gaps.Add(row);
        }

        WarnOfGaps(gaps, starts);
        return new TimeAxis(rate, [.. starts]);
    }

    private double SecondsPerUnit(double medianStep)
    {
        if (plan.IsClock)
        {
            return 1;
        }

        if (plan.Unit is { Kind: TextUnitKind.Time } unit)
        {
            return unit.Factor;
        }

        // Without a unit: seconds, unless that would be slower than any recording of a muscle; then the next smaller unit that is not.
        const double SlowestHz = 20;
        foreach ((string name, double factor) in new[] { ("s", 1.0), ("ms", 1e-3), ("µs", 1e-6), ("ns", 1e-9) })
        {
            if (1 / (medianStep * factor) >= SlowestHz)
            {
                if (name is not "s")
                {
                    warnings.Add("header", string.Create(CultureInfo.InvariantCulture, $"the time column \"{plan.RawLabel}\" has no unit; taken as {name} (median step {medianStep:G6})"));
                }

                return factor;
            }
        }

        return 1;
    }

    private void RefuseIrregular(TimeStep step, double digitS)
    {
        long steps = table.Spool.Rows - 1;
        if (step.Odd > MostOddShare * steps)
        {
            throw TextErrors.Irregular(file, plan.RawLabel, string.Create(
                CultureInfo.InvariantCulture,
                $"{step.Odd} of {steps} steps differ from the median step by more than half of it"));
        }

        if (digitS > CoarseDigit * step.MeanS && step.GapRows.Count > Math.Max(3, MostGapShareWhenCoarse * steps))
        {
            throw TextErrors.Irregular(file, plan.RawLabel, string.Create(
                CultureInfo.InvariantCulture,
                $"times have too few digits for steps of {step.MeanS * 1000:G3} ms, so that {step.GapRows.Count} of {steps} look like gaps"));
        }
    }

    private Rational Decide(double rateHz, double tolerance, (decimal RateHz, string Source)? stated)
    {
        Rational found = NiceRate.Find(rateHz, tolerance);
        if (stated is not { } claim)
        {
            return found;
        }

        if (Math.Abs((double)claim.RateHz - rateHz) <= Math.Max(tolerance, 1e-3) * rateHz)
        {
            return Rational.FromDecimal(claim.RateHz);
        }

        warnings.Add("header", string.Create(
            CultureInfo.InvariantCulture,
            $"the {claim.Source} states {claim.RateHz} Hz, the time column \"{plan.RawLabel}\" gives {found} Hz; the time column is used"));
        return found;
    }

    private ImmutableArray<RowStart> Starts(List<long> gapRows, Rational rate, double scale)
    {
        List<RowStart> starts = [new RowStart(0, 0)];
        double[] time = new double[1];
        foreach (long row in gapRows)
        {
            table.Spool.Read(_column, row, time);
            long follows = starts[^1].Timeline + row - starts[^1].Row;
            long index = (long)Math.Min(Math.Round(time[0] * scale * rate.Value, MidpointRounding.AwayFromZero), MostIndex);
            starts.Add(new RowStart(row, Math.Max(follows + 1, index)));
        }

        return [.. starts];
    }

    private void WarnOfStart(double scale, double stepS)
    {
        double firstS = _times.First * scale;
        if (_times.MidnightLine >= 0)
        {
            warnings.AddLine(_times.MidnightLine, "the clock passes midnight; taken as the next day");
        }

        if (!plan.IsClock && Math.Abs(firstS) > 1.5 * stepS)
        {
            warnings.AddLine(table.Lines.LineOf(0), string.Create(CultureInfo.InvariantCulture, $"time starts at {firstS:G9} s; every time here counts from the first sample"));
        }
    }

    private void WarnOfJitter(TimeStep step, bool jitters, double deviationS)
    {
        if (jitters)
        {
            warnings.Add("time column", string.Create(
                CultureInfo.InvariantCulture,
                $"time stamps are uneven: mean rate {1 / step.MeanS:G6} Hz, steps from {step.LeastS * 1000:G3} to {step.MostS * 1000:G3} ms (standard deviation {step.SdS * 1000:G3} ms), samples up to {deviationS * 1000:G3} ms from their time; read as evenly sampled"));
        }
    }

    private void WarnOfGaps(List<long> gapRows, IReadOnlyList<RowStart> starts)
    {
        for (int gap = 0; gap < Math.Min(gapRows.Count, GapsShown); gap++)
        {
            (RowStart before, RowStart after) = (starts[gap], starts[gap + 1]);
            long missing = after.Timeline - before.Timeline - (after.Row - before.Row);
            string noun = missing == 1 ? "sample" : "samples";
            warnings.AddLine(table.Lines.LineOf(after.Row), string.Create(CultureInfo.InvariantCulture, $"time jumps: {missing} {noun} missing before this line"));
        }

        if (gapRows.Count > GapsShown)
        {
            warnings.Add("time column", string.Create(CultureInfo.InvariantCulture, $"{gapRows.Count - GapsShown} more jumps in time"));
        }
    }
}
