using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Views;
using ScottPlot;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>The spectrum of a cell's window: the band of the muscle lighter, the harmonics of the mains as dotted lines with a disc.</summary>
internal static class CellSpectrumPanel
{
    private const double BeyondBand = 1.3;
    private const double Decades = 4;

    /// <summary>Draws the panel.</summary>
    public static void Draw(CellPen pen, CellScene scene, Area outer)
    {
        string unit = scene.Traces[0].Unit is { Length: > 0 } known ? known : "raw codes";
        Area field = pen.Field(outer, "Spectrum", $"of the window, {unit}/\u221AHz", hasTimes: true);
        if (scene.Spectrum is not { } spectrum)
        {
            pen.SayNothing(field, "no unbroken 0.2 s");
            return;
        }

        double topHz = Math.Min((spectrum.Density.Length - 1) * spectrum.BinHz, scene.BandToHz * BeyondBand);

        // Bins 0 and 1 hold what the removed mean leaves.
        double[] amplitudes = [.. spectrum.Density.Skip(2).TakeWhile((_, bin) => (bin + 2) * spectrum.BinHz <= topHz).Select(Math.Sqrt)];
        double highest = amplitudes.DefaultIfEmpty(1).Max();
        double lowest = Math.Max(amplitudes.Where(value => value > 0).DefaultIfEmpty(1).Min(), highest / Math.Pow(10, Decades));
        ValueAxis across = new(0, topHz, field.Left, field.Right - 1);
        ValueAxis up = new(lowest / 1.3, highest * 1.5, field.Bottom - pen.Scale, field.Top + (12 * pen.Scale), isLog: true);
        pen.Picture.Fill(Area.Between(across.At(scene.BandFromHz), field.Top, across.At(scene.BandToHz), field.Bottom), pen.Inks.Window);
        pen.Values(field, up);
        pen.Below(field, across.Ticks(3.4f * pen.LineHeight).Select(tick => (across.At(tick.Value), $"{tick.Text} Hz")), hasTimes: true);
        DrawHarmonics(pen, scene, field, across, topHz);
        pen.Picture.Path([.. amplitudes.Select((value, bin) => new Pixel(across.At((bin + 2) * spectrum.BinHz), up.At(value)))], pen.Inks.Ink, 1.3f * pen.Scale);
    }

    private static void DrawHarmonics(CellPen pen, CellScene scene, Area field, ValueAxis across, double topHz)
    {
        float size = 6 * pen.Scale;
        for (double hz = scene.MainsHz; scene.MainsHz > 0 && hz <= topHz; hz += scene.MainsHz)
        {
            float x = MathF.Round(across.At(hz));
            pen.Picture.Line(x, field.Top + size, x, field.Bottom, pen.Inks.Edge, pen.Scale, Dash.Dotted);
            pen.Picture.Disc(Area.Around(x, field.Top + (size / 2) + 2, size, size), pen.Inks.Edge, pen.Inks.Edge, 1);
        }
    }
}
