using System.Runtime.InteropServices;
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

    // Without a filter equal shades stay equal bytes, which the slowest compression makes most of.
    private const SKPngEncoderFilterFlags SmallFilter = SKPngEncoderFilterFlags.None;
    private const int SmallLevel = 9;

    // 16 shades a colour, 0 and 255 among them.
    private const int ShadeStep = 17;

    /// <summary>Draws a picture that fills the whole figure.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="isSmall">Whether it is to be kept beside texts: half the bytes, for fewer shades on edges and more time.</param>
    public static byte[] Of(Picture picture, bool isSmall = false)
    {
        FigureFont.Install();
        using Plot plot = new();
        plot.FigureBackground.Color = Inks.Paper;
        plot.DataBackground.Color = Inks.Paper;
        plot.Layout.Frameless();
        plot.HideGrid();
        plot.Add.Plottable(new PictureLayer(picture));
        return Of(plot, picture.Width, picture.Height, isSmall);
    }

    /// <summary>Draws a ScottPlot figure.</summary>
    public static byte[] Of(Plot plot, int width, int height, bool isSmall = false)
    {
        SKImageInfo format = new(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        using SKSurface surface = SKSurface.Create(format);
        plot.Render(surface.Canvas, width, height);
        using SKPixmap pixels = surface.PeekPixels();
        if (isSmall)
        {
            TakeShades(pixels.GetPixelSpan<byte>());
        }

        using SKData encoded = pixels.Encode(isSmall ? new SKPngEncoderOptions(SmallFilter, SmallLevel) : new SKPngEncoderOptions(Filter, CompressionLevel))
            ?? throw new InvalidOperationException("the figure could not be encoded");
        return encoded.ToArray();
    }

    // Flat areas keep their colour: what differs from both neighbours in its row is an edge.
    private static void TakeShades(Span<byte> samples)
    {
        Span<uint> pixels = MemoryMarshal.Cast<byte, uint>(samples);
        uint before = 0;
        for (int i = 0; i < pixels.Length; i++)
        {
            uint own = pixels[i];
            if (own != before && i + 1 < pixels.Length && own != pixels[i + 1])
            {
                foreach (ref byte sample in samples.Slice(sizeof(uint) * i, sizeof(uint)))
                {
                    sample = (byte)((sample + (ShadeStep / 2)) / ShadeStep * ShadeStep);
                }
            }

            before = own;
        }
    }
}
