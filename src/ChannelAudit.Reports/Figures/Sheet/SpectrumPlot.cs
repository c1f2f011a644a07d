using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>The spectrum of the whole recording with the band of the muscle, the harmonics of the mains and the strongest other narrow peak.</summary>
internal static class SpectrumPlot
{
    private const double BeyondBand = 1.3;
    private const double Decades = 4;

    /// <summary>Draws the panel.</summary>
    /// <param name="picture">Where to.</param>
    /// <param name="subject">Whose spectrum.</param>
    /// <param name="outer">All the room there is.</param>
    /// <param name="frame">What it shares with other spectra, or null when it stands alone.</param>
    public static void Draw(Picture picture, SheetSubject subject, Area outer, PanelFrame? frame = null)
    {
        if (subject.View.Density.IsEmpty)
        {
            new Panel(picture, subject, outer, "Spectrum", hasTimes: false).SayNothing("too short for a spectrum");
            return;
        }

        frame ??= Alone(subject);
        Panel panel = new(picture, subject, outer, frame.Heading);
        double topHz = TopHz(subject);
        ValueAxis across = panel.Rightwards(0, topHz);
        picture.Fill(Area.Between(across.At(subject.Channel.BandFromHz), panel.Field.Top, across.At(subject.Channel.BandToHz), panel.Field.Bottom), Inks.Paper);

        float lane = Marks.LaneHeight(subject);
        ValueAxis up = new(frame.From / 1.3, frame.To * 1.3, panel.Field.Bottom - 1, panel.Field.Top + lane, isLog: true);
        panel.DrawLeft(up);
        panel.DrawBelow(across.Ticks(3 * TextMeasure.LineHeight(subject.Note)).Select(tick => (across.At(tick.Value), $"{tick.Text} Hz")));
        picture.Path([.. Amplitudes(subject).Select((value, bin) => new Pixel(across.At((bin + 2) * subject.View.BinHz), up.At(value)))], Inks.Ink, Math.Max(1, 1.6f * subject.Scale.Unit));
        DrawHarmonics(picture, subject, panel, across, topHz);
        DrawNarrow(picture, subject, panel, across);
    }

    /// <summary>The least and the greatest amplitude density that is worth its room.</summary>
    public static (double Lowest, double Highest) Range(SheetSubject subject)
    {
        ImmutableArray<double> amplitudes = Amplitudes(subject);
        double highest = amplitudes.DefaultIfEmpty(1).Max();
        return (Math.Max(amplitudes.Where(value => value > 0).DefaultIfEmpty(1).Min(), highest / Math.Pow(10, Decades)), highest);
    }

    private static PanelFrame Alone(SheetSubject subject)
    {
        string unit = subject.Unit.Length > 0 ? $"{subject.Unit}/\u221AHz" : "raw codes/\u221AHz";
        string band = $"{Quantities.Short(subject.Channel.BandFromHz)} to {Quantities.Short(subject.Channel.BandToHz)} Hz";
        (double lowest, double highest) = Range(subject);
        return new PanelFrame($"Spectrum of the whole recording, {unit}; white: band of the muscle, {band}; dots: mains", lowest, highest);
    }

    // Bins 0 and 1 hold what the removed mean leaves.
    private static ImmutableArray<double> Amplitudes(SheetSubject subject) =>
        [.. subject.View.Density.Skip(2).TakeWhile((_, bin) => (bin + 2) * subject.View.BinHz <= TopHz(subject)).Select(Math.Sqrt)];

    private static double TopHz(SheetSubject subject) =>
        Math.Min((subject.View.Density.Length - 1) * subject.View.BinHz, subject.Channel.BandToHz * BeyondBand);

    private static void DrawHarmonics(Picture picture, SheetSubject subject, Panel panel, ValueAxis across, double topHz)
    {
        float size = Math.Max(6, 8 * subject.Scale.Unit);
        foreach (double hz in subject.View.HarmonicsHz.Where(hz => hz <= topHz))
        {
            float x = MathF.Round(across.At(hz));
            picture.Line(x, panel.Field.Top + size, x, panel.Field.Bottom, Inks.PassLine, 1, Dash.Dotted);
            picture.Disc(Area.Around(x, panel.Field.Top + (size / 2) + 2, size, size), Inks.PassLine, Inks.PassLine, 1);
        }
    }

    // Shown when it is a finding somewhere: a strongest peak there always is.
    private static void DrawNarrow(Picture picture, SheetSubject subject, Panel panel, ValueAxis across)
    {
        bool isFound = subject.Channel.Findings
            .Concat(subject.Channel.Cells.SelectMany(cell => cell.Findings))
            .Any(finding => finding.Grade > Grade.Pass && string.Equals(finding.Reason, Findings.ReasonCode.NarrowBand, StringComparison.Ordinal));
        if (!isFound || subject.Measure("narrow_hz") is not { } hz)
        {
            return;
        }

        float x = across.At(hz);
        TextStyle style = subject.Note with { Bold = true, Color = Inks.RejectLine };
        string text = $"N {Quantities.Short(hz)} Hz";
        picture.Line(x, panel.Field.Top, x, panel.Field.Bottom, Inks.RejectLine, 2, Dash.Dashed);
        float left = Math.Min(x + 4, panel.Field.Right - TextMeasure.Width(text, style) - 2);
        picture.Text(text, style, MathF.Round(left), panel.Field.Top + Math.Max(10, 12 * subject.Scale.Unit));
    }
}
