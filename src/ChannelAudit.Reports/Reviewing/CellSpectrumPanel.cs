using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Views;
using ScottPlot;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>The spectrum of a cell's window: the band of the muscle lighter, a disc above each harmonic of the mains that counts and a dotted line from it down to the peak.</summary>
internal static class CellSpectrumPanel
{
    private const double BeyondBand = 1.3;
    private const double Decades = 4;
    private const double NearHz = 2;
    private const float DiscSize = 6;

    /// <summary>Draws the panel.</summary>
    public static void Draw(CellPen pen, CellScene scene, Area outer)
    {
        string unit = scene.Traces[0].Unit is { Length: > 0 } known ? known : "raw codes";
        Area field = pen.FieldIn(outer, hasTimes: true, (DiscSize + 4) * pen.Scale);
        pen.Heading(outer, "Spectrum", $"of the window, {unit}/\u221AHz");
        pen.Picture.Fill(field, pen.Inks.Field);
        if (scene.Spectrum is not { IsFlat: false } spectrum)
        {
            pen.SayNothing(field, scene.Spectrum is null ? "no unbroken 0.2 s" : "no signal: the window is flat");
            return;
        }

        double topHz = Math.Min((spectrum.Density.Length - 1) * spectrum.BinHz, scene.BandToHz * BeyondBand);
        double[] amplitudes = Amplitudes(spectrum, topHz);
        double highest = amplitudes.DefaultIfEmpty(1).Max();
        double lowest = Math.Max(amplitudes.Where(value => value > 0).DefaultIfEmpty(1).Min(), highest / Math.Pow(10, Decades));
        ValueAxis across = new(0, topHz, field.Left, field.Right - 1);
        ValueAxis up = new(lowest / 1.3, highest * 1.5, field.Bottom - pen.Scale, field.Top + pen.LineHeight, isLog: true);
        pen.Picture.Fill(Area.Between(across.At(scene.BandFromHz), field.Top, across.At(scene.BandToHz), field.Bottom), pen.Inks.Window);
        pen.Values(field, up);
        pen.Below(field, across.Ticks(3.4f * pen.LineHeight).Select(tick => (across.At(tick.Value), $"{tick.Text} Hz")), hasTimes: true);
        pen.Picture.Path([.. amplitudes.Select((value, bin) => new Pixel(across.At((bin + 2) * spectrum.BinHz), up.At(value)))], pen.Inks.Ink, 1.3f * pen.Scale);
        DrawHarmonics(pen, scene, field, across, hz => up.At(PeakNear(spectrum, amplitudes, hz)), topHz);
        DrawNote(pen, scene, spectrum, field);
    }

    // Bins 0 and 1 hold what the removed mean leaves.
    private static double[] Amplitudes(WindowSpectrum spectrum, double topHz) =>
        [.. spectrum.Density.Skip(2).TakeWhile((_, bin) => (bin + 2) * spectrum.BinHz <= topHz).Select(Math.Sqrt)];

    private static double PeakNear(WindowSpectrum spectrum, double[] amplitudes, double hz)
    {
        int reach = Math.Max(1, (int)Math.Round(NearHz / spectrum.BinHz));
        int centre = (int)Math.Round(hz / spectrum.BinHz) - 2;
        int from = Math.Clamp(centre - reach, 0, amplitudes.Length);
        int to = Math.Clamp(centre + reach + 1, from, amplitudes.Length);
        return amplitudes[from..to].DefaultIfEmpty(0).Max();
    }

    // The line ends above the peak, which it must not hide.
    private static void DrawHarmonics(CellPen pen, CellScene scene, Area field, ValueAxis across, Func<double, float> top, double topHz)
    {
        float size = DiscSize * pen.Scale;
        foreach (double hz in scene.HarmonicsHz.Where(hz => hz <= topHz))
        {
            float x = MathF.Round(across.At(hz));
            pen.Picture.Disc(Area.Around(x, field.Top - (size / 2) - (2 * pen.Scale), size, size), pen.Inks.Edge, pen.Inks.Edge, 1);
            float end = top(hz) - size;
            if (end > field.Top)
            {
                pen.Picture.Line(x, field.Top, x, end, pen.Inks.Edge, pen.Scale, Dash.Dotted);
            }
        }
    }

    private static void DrawNote(CellPen pen, CellScene scene, WindowSpectrum spectrum, Area field)
    {
        float top = field.Top;
        string segments = $"{Quantities.Many(spectrum.Segments, "segment")} of {Quantities.Short(spectrum.LengthS)} s";
        foreach (string line in scene.Behind is null ? [segments] : (string[])[segments, "behind the filter"])
        {
            string text = TextMeasure.Fit(line, pen.Note, field.Width - (8 * pen.Scale));
            float width = TextMeasure.Width(text, pen.Note) + (8 * pen.Scale);
            Area plate = new(field.Right - width, top, width, pen.LineHeight);
            pen.Picture.Fill(plate, pen.Inks.Field);
            pen.Picture.Text(text, pen.Note, MathF.Round(plate.Left + (4 * pen.Scale)), plate.Top);
            top += pen.LineHeight;
        }
    }
}
