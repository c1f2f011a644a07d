using System.Collections.Immutable;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Verdicts;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Tests.Reviewing;

/// <summary>Scenes that need no file: waves of a known size, a window from 155 to 158 s.</summary>
internal static class Scenes
{
    /// <summary>A scene.</summary>
    /// <param name="sizesUv">The amplitude of each channel's wave; 0 for a flat one.</param>
    public static CellScene Of(params ReadOnlySpan<double> sizesUv)
    {
        ImmutableArray<CellTrace>.Builder traces = ImmutableArray.CreateBuilder<CellTrace>();
        foreach (double size in sizesUv)
        {
            traces.Add(new CellTrace(FormattableString.Invariant($"site {traces.Count + 1}"), "\u00B5V", new SignalExcerpt(Wave(size), 15.8)));
        }

        return new CellScene
        {
            Traces = traces.ToImmutable(),
            FromS = 154.5,
            ToS = 158.5,
            WindowFromS = 155,
            WindowToS = 158,
            IsClock = true,
            Spectrum = Spectrum,
            HarmonicsHz = [50, 100, 150, 200, 250, 300, 350, 400],
            BandFromHz = 20,
            BandToHz = 450,
        };
    }

    /// <summary>A spectrum with a peak at 50 Hz.</summary>
    public static WindowSpectrum Spectrum { get; } = new([.. Enumerable.Range(0, 1001).Select(bin => bin == 50 ? 4 : 0.01)], 1, 5, 1, IsFlat: false);

    /// <summary>Three reasons: samples at fault, a reject of the whole window, a questionable of a stretch.</summary>
    public static ImmutableArray<CellMarking> Marks { get; } =
    [
        new(156, 158, "F", Grade.Reject, IsExact: true), new(155, 158, "L", Grade.Reject), new(155.5, 156, "R", Grade.Questionable),
    ];

    /// <summary>The scene with its second half missing on every channel.</summary>
    public static CellScene Halved(CellScene scene) => scene with
    {
        Traces = [.. scene.Traces.Select(trace => trace with { Excerpt = trace.Excerpt with { Trace = Halved(trace.Excerpt.Trace) } })],
    };

    private static Trace Halved(Trace trace) => trace with
    {
        Least = [.. trace.Least.Select((value, i) => i < trace.Columns / 2 ? value : double.NaN)],
        Greatest = [.. trace.Greatest.Select((value, i) => i < trace.Columns / 2 ? value : double.NaN)],
    };

    private static Trace Wave(double size) => new(
        154.5,
        158.5,
        [.. Enumerable.Range(0, 860).Select(i => 15.8 - (size * (0.8 + (0.2 * Math.Sin(i)))))],
        [.. Enumerable.Range(0, 860).Select(i => 15.8 + (size * (0.8 + (0.2 * Math.Cos(i)))))]);
}
