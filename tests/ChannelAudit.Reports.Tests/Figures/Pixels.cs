using ChannelAudit.Reports.Figures.Drawing;
using ScottPlot;
using SkiaSharp;

namespace ChannelAudit.Reports.Tests.Figures;

/// <summary>A PNG to look into.</summary>
internal sealed class Pixels : IDisposable
{
    private readonly SKBitmap _bitmap;

    public Pixels(byte[] png) => _bitmap = SKBitmap.Decode(png);

    public int Width => _bitmap.Width;

    public int Height => _bitmap.Height;

    /// <summary>Pixels of exactly this colour in a column.</summary>
    public int InColumn(float x, Color color) => Enumerable.Range(0, Height).Count(y => Is((int)x, y, color));

    /// <summary>Pixels of exactly this colour inside an area.</summary>
    public int Inside(Area area, Color color) => Count(area, (x, y) => Is(x, y, color));

    /// <summary>Pixels darker than middle grey inside an area.</summary>
    public int DarkInside(Area area) => Count(area, (x, y) => _bitmap.GetPixel(x, y) is var pixel && pixel.Red + pixel.Green + pixel.Blue < 3 * 128);

    /// <summary>Separate stretches of a colour along a line of pixels.</summary>
    public int StretchesInRow(int y, Color color) =>
        Enumerable.Range(1, Width - 1).Count(x => Is(x, y, color) && !Is(x - 1, y, color));

    public void Dispose() => _bitmap.Dispose();

    private bool Is(int x, int y, Color color) =>
        _bitmap.GetPixel(x, y) is var pixel && pixel.Red == color.Red && pixel.Green == color.Green && pixel.Blue == color.Blue;

    private int Count(Area area, Func<int, int, bool> counts)
    {
        int count = 0;
        for (int y = Math.Max(0, (int)area.Top); y < Math.Min(Height, (int)area.Bottom); y++)
        {
            for (int x = Math.Max(0, (int)area.Left); x < Math.Min(Width, (int)area.Right); x++)
            {
                count += counts(x, y) ? 1 : 0;
            }
        }

        return count;
    }
}
