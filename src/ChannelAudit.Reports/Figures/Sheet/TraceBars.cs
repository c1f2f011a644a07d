using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Views;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>A trace as bars from the least to the greatest sample of every pixel; with fewer columns than pixels, as a line.</summary>
internal static class TraceBars
{
    /// <summary>Draws the trace into a field.</summary>
    /// <param name="picture">Where to.</param>
    /// <param name="field">The field; it holds the trace from edge to edge.</param>
    /// <param name="trace">The trace.</param>
    /// <param name="axis">Values to pixels.</param>
    /// <param name="baseline">What is taken off each column.</param>
    /// <param name="ink">The colour; that of all figures when left out.</param>
    public static void Draw(Picture picture, Area field, Trace trace, ValueAxis axis, Func<int, double> baseline, Color? ink = null)
    {
        Color color = ink ?? Inks.Ink;
        if (trace.Columns < field.Width)
        {
            picture.Path(Points(field, trace, axis, baseline), color, 1.5f);
            return;
        }

        int pixels = (int)field.Width;
        (float Top, float Bottom)[] bars = new (float, float)[pixels];
        for (int pixel = 0; pixel < pixels; pixel++)
        {
            int from = (int)((long)pixel * trace.Columns / pixels);
            int to = (int)((long)(pixel + 1) * trace.Columns / pixels);
            double least = double.NaN;
            double greatest = double.NaN;
            for (int column = from; column < to; column++)
            {
                least = double.MinNumber(least, trace.Least[column] - baseline(column));
                greatest = double.MaxNumber(greatest, trace.Greatest[column] - baseline(column));
            }

            bars[pixel] = (axis.At(greatest), axis.At(least) + 1);
        }

        Join(bars);
        picture.Bars(field.Left, bars, color);
    }

    // Where a pixel holds one sample or two, neighbours need not meet: the signal went from one to the next all the same.
    private static void Join((float Top, float Bottom)[] bars)
    {
        (float Top, float Bottom) before = bars[0];
        for (int i = 1; i < bars.Length; i++)
        {
            (float Top, float Bottom) own = bars[i];
            if (float.IsFinite(own.Top) && float.IsFinite(before.Top))
            {
                bars[i] = (Math.Min(own.Top, before.Bottom), Math.Max(own.Bottom, before.Top));
            }

            before = own;
        }
    }

    private static Pixel[] Points(Area field, Trace trace, ValueAxis axis, Func<int, double> baseline) =>
    [
        .. Enumerable.Range(0, trace.Columns).Select(column => new Pixel(
            field.Left + (field.Width * (column + 0.5f) / trace.Columns),
            axis.At(((trace.Least[column] + trace.Greatest[column]) / 2) - baseline(column)))),
    ];
}
