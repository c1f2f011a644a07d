using ChannelAudit.Measures;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Views;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Pair;

/// <summary>Coherence over frequency at rest and in the contractions of each: gel carries all frequencies alike, tissue takes the high ones away.</summary>
internal static class CoherencePlot
{
    private const double FromHz = 0;
    private const double ToHz = 460;

    /// <summary>Draws the panel.</summary>
    public static void Draw(Picture picture, PairSubject subject, Area outer)
    {
        (PairState State, CoherenceSteps Curve)[] curves = [.. Curves(subject.View)];
        if (curves.Length == 0)
        {
            new Panel(picture, subject.Note, outer, "Coherence over frequency", hasTimes: false).SayNothing("too little rest and no contraction");
            return;
        }

        Panel panel = new(picture, subject.Note, outer, $"Coherence (correlation squared){(subject.View.IsPart ? " where joined" : string.Empty)} in steps of 10 Hz, marks as above");
        ValueAxis across = panel.Rightwards(FromHz, ToHz);
        ValueAxis up = panel.UpwardsBelowHeading(0, 1);
        DrawBand(picture, panel, across, PairBands.LowFromHz, PairBands.LowToHz);
        DrawBand(picture, panel, across, PairBands.HighFromHz, PairBands.HighToHz);
        panel.DrawLeft(up);
        panel.DrawBelow(across.Ticks(4 * TextMeasure.LineHeight(subject.Note)).Select(tick => (across.At(tick.Value), $"{tick.Text} Hz")));
        foreach ((PairState state, CoherenceSteps curve) in curves)
        {
            DrawCurve(picture, subject, state, curve, across, up);
        }
    }

    private static IEnumerable<(PairState State, CoherenceSteps Curve)> Curves(PairView view)
    {
        foreach ((PairState state, CoherenceSteps? curve) in new[]
        {
            (PairState.Rest, view.Rest),
            (PairState.ActiveB, IsOne(view) ? null : view.ActiveB),
            (IsOne(view) ? PairState.ActiveBoth : PairState.ActiveA, view.ActiveA),
        })
        {
            if (curve is not null && !curve.Steps.IsEmpty)
            {
                yield return (state, curve);
            }
        }
    }

    // Where every contraction counts for both, the two curves are one.
    private static bool IsOne(PairView view) => view.Seconds.Any(second => second.State == PairState.ActiveBoth)
        && !view.Seconds.Any(second => second.State is PairState.ActiveA or PairState.ActiveB);

    private static void DrawBand(Picture picture, Panel panel, ValueAxis across, double fromHz, double toHz) =>
        picture.Fill(Area.Between(across.At(fromHz), panel.Field.Top, across.At(toHz), panel.Field.Bottom), Inks.Paper);

    // Each step is a mark, so that curves stay apart without colour; the line between the two bands would say what was not measured.
    private static void DrawCurve(Picture picture, PairSubject subject, PairState state, CoherenceSteps curve, ValueAxis across, ValueAxis up)
    {
        float size = Math.Max(6, 8 * subject.Scale.Unit);
        foreach ((double Hz, double Coherence)[] part in new[] { PartOf(curve, high: false), PartOf(curve, high: true) })
        {
            Pixel[] points = [.. part.Select(step => new Pixel(across.At(step.Hz), up.At(step.Coherence)))];
            picture.Path(points, PairStateLook.InkOf(state), 1.5f);
            PairStateLook.Marks(picture, state, points, size);
        }
    }

    private static (double Hz, double Coherence)[] PartOf(CoherenceSteps curve, bool high) =>
        [.. curve.Steps.Where(step => step.Hz > (PairBands.LowToHz + PairBands.HighFromHz) / 2 == high)];
}
