using System.Collections.Immutable;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>Values to pixels, upwards or to the right, linear or by ratio.</summary>
internal sealed class ValueAxis
{
    private readonly double from;
    private readonly double to;
    private readonly float start;
    private readonly float end;
    private readonly bool isLog;

    /// <summary>Makes an axis.</summary>
    /// <param name="from">Value at the start; positive for ratios.</param>
    /// <param name="to">Value at the end; made larger than <paramref name="from"/> when it is not.</param>
    /// <param name="start">Pixel of the first value.</param>
    /// <param name="end">Pixel of the last.</param>
    /// <param name="isLog">Whether equal ratios have equal lengths.</param>
    public ValueAxis(double from, double to, float start, float end, bool isLog = false)
    {
        this.from = isLog ? Math.Max(from, double.Epsilon) : from;
        this.to = to > this.from ? to : isLog ? this.from * 10 : this.from + 1;
        this.start = start;
        this.end = end;
        this.isLog = isLog;
    }

    /// <summary>The pixel of a value, kept on the axis; NaN for NaN.</summary>
    public float At(double value)
    {
        double share = isLog ? Math.Log(Math.Max(value, from) / from) / Math.Log(to / from) : (value - from) / (to - from);
        return double.IsNaN(value) ? float.NaN : (float)(start + ((end - start) * Math.Clamp(share, 0, 1)));
    }

    /// <summary>Round values at least so many pixels apart: powers of ten, or 1, 2 or 5 of them.</summary>
    public ImmutableArray<(double Value, string Text)> Ticks(float apart)
    {
        IEnumerable<double> values = isLog ? Decades(apart) : Steps(apart);
        return [.. values.Where(value => value >= from - 1e-12 && value <= to * (1 + 1e-12)).Select(value => (value, Quantities.Short(value)))];
    }

    private IEnumerable<double> Steps(float apart)
    {
        double wanted = (to - from) * apart / Math.Abs(end - start);
        double power = Math.Pow(10, Math.Floor(Math.Log10(wanted)));
        double step = power * (wanted <= power ? 1 : wanted <= 2 * power ? 2 : wanted <= 5 * power ? 5 : 10);
        for (double index = Math.Ceiling(from / step); index * step <= to; index++)
        {
            // Rounded, so that 3 x 0.1 is 0.3.
            yield return Math.Round(index * step, 12);
        }
    }

    private IEnumerable<double> Decades(float apart)
    {
        double pixels = Math.Abs(end - start) / Math.Log10(to / from);
        int stride = Math.Max(1, (int)Math.Ceiling(apart / pixels));

        // Between 1, 2, 5 and 10 lie at least 0.3 of a decade.
        bool hasRoom = 0.3 * pixels > 0.65 * apart;
        for (int power = (int)Math.Floor(Math.Log10(from)); power <= Math.Ceiling(Math.Log10(to)); power += stride)
        {
            foreach (int digit in hasRoom ? [1, 2, 5] : (int[])[1])
            {
                yield return Math.Round(digit * Math.Pow(10, power), 12);
            }
        }
    }
}
