using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Typefaces;
using ScottPlot;
using SkiaSharp;

namespace ChannelAudit.Reports.Figures.Drawing;

/// <summary>From a picture to the bytes of a PNG file; the same picture gives the same bytes.</summary>
internal static class Png
{
    // Encoding is most of a picture's time. On flat areas one fixed filter is twice as fast as trying all, for a few per cent more bytes.
    private const SKPngEncoderFilterFlags Filter = SKPngEncoderFilterFlags.Up;
    private const int CompressionLevel = 5;

    /// <summary>Draws a picture that fills the whole figure.</summary>
    public static byte[] Of(Picture picture)
    {
        FigureFont.Install();
        using Plot plot = new();
        plot.FigureBackground.Color = Inks.Paper;
        plot.DataBackground.Color = Inks.Paper;
        plot.Layout.Frameless();
        plot.HideGrid();
        plot.Add.Plottable(new PictureLayer(picture));
        return Of(plot, picture.Width, picture.Height);
    }

    /// <summary>Draws a ScottPlot figure.</summary>
    public static byte[] Of(Plot plot, int width, int height)
    {
        SKImageInfo format = new(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        using SKSurface surface = SKSurface.Create(format);
        plot.Render(surface.Canvas, width, height);
        using SKPixmap pixels = surface.PeekPixels();
        using SKData encoded = pixels.Encode(new SKPngEncoderOptions(Filter, CompressionLevel))
            ?? throw new InvalidOperationException("the figure could not be encoded");
        return encoded.ToArray();
    }
}
