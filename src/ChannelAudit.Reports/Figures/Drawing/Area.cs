using ScottPlot;

namespace ChannelAudit.Reports.Figures.Drawing;

/// <summary>A rectangle in pixels, origin at the top left.</summary>
/// <param name="Left">Left edge.</param>
/// <param name="Top">Top edge.</param>
/// <param name="Width">Width, not negative.</param>
/// <param name="Height">Height, not negative.</param>
internal readonly record struct Area(float Left, float Top, float Width, float Height)
{
    public float Right => Left + Width;

    public float Bottom => Top + Height;

    public float CentreX => Left + (Width / 2);

    public float CentreY => Top + (Height / 2);

    public static Area Between(float left, float top, float right, float bottom) =>
        new(left, top, Math.Max(0, right - left), Math.Max(0, bottom - top));

    public static Area Around(float centreX, float centreY, float width, float height) =>
        new(centreX - (width / 2), centreY - (height / 2), width, height);

    /// <summary>Whether the two share an area; touching edges do not.</summary>
    public bool Overlaps(Area other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    public Area Inset(float margin) => Between(Left + margin, Top + margin, Right - margin, Bottom - margin);

    /// <summary>The nearest whole pixels, at least one wide and high, so that edges are crisp.</summary>
    public Area Snapped()
    {
        float left = MathF.Round(Left);
        float top = MathF.Round(Top);
        return Between(left, top, Math.Max(left + 1, MathF.Round(Right)), Math.Max(top + 1, MathF.Round(Bottom)));
    }

    public PixelRect ToPixelRect() => new(Left, Right, Bottom, Top);
}
