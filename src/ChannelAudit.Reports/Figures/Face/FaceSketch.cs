using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>A face of a few lines, from the front: nobody's. The box runs from above the forehead to below the neck.</summary>
internal static class FaceSketch
{
    /// <summary>Width of the box for its height.</summary>
    public const float Shape = 0.86f;

    private const float HalfHead = 0.345f;

    /// <summary>Half the width from ear to ear, as a share of the box.</summary>
    public const float HalfWidth = 0.4f;

    private const int Steps = 96;
    private const float CentreY = 0.45f;
    private const float Line = 2.5f;

    /// <summary>Draws it.</summary>
    public static void Draw(Picture picture, Area box)
    {
        foreach (int side in new[] { -1, 1 })
        {
            // Neck and shoulder, then the ear, so that the head covers where they begin.
            Stroke(picture, box, side, t => (0.185f + (0.03f * t) + (0.16f * t * t * t * t), 0.80f + (0.195f * t)));
            Closed(picture, box, t => (0.5f + (side * (HalfHead + 0.012f)) + (0.034f * MathF.Cos(t)), 0.51f + (0.07f * MathF.Sin(t))), Inks.Ribbon);
        }

        Closed(picture, box, Head, Inks.Ribbon);
        Hair(picture, box);
        foreach (int side in new[] { -1, 1 })
        {
            Eye(picture, box, side);
            Stroke(picture, box, side, t => (0.08f + (0.165f * t), 0.42f - (0.028f * MathF.Sin(MathF.PI * MathF.Pow(t, 0.8f)))));
            Stroke(picture, box, side, t => (0.05f - (0.05f * t), 0.652f + (0.02f * MathF.Sin(MathF.PI / 2 * t))));
            Stroke(picture, box, side, t => (0.1f * t, 0.7445f - (0.008f * (1 - t)) - (0.006f * t * t)));
            Stroke(picture, box, side, t => (0.045f * t, 0.772f - (0.012f * t * t)));
        }
    }

    // From temple to temple over the top, and back along the hairline.
    private static void Hair(Picture picture, Area box)
    {
        const float temple = 0.03f;
        const float volume = 1.03f;
        IEnumerable<(float X, float Y)> outside = Enumerable.Range(0, Steps + 1)
            .Select(i => Head(MathF.PI + temple + ((MathF.PI - (2 * temple)) * i / Steps)))
            .Select(point => (0.5f + ((point.X - 0.5f) * volume), CentreY + ((point.Y - CentreY) * volume)));
        (float X, float Y) right = Head(-temple);
        IEnumerable<(float X, float Y)> line = Enumerable.Range(0, Steps + 1)
            .Select(i => 1 - (2f * i / Steps))
            .Select(t => (0.5f + ((right.X - 0.5f) * t), 0.165f + ((right.Y - 0.165f) * MathF.Pow(MathF.Abs(t), 6))));
        picture.Polygon([.. outside.Concat(line).Select(point => Pixel(box, point))], Inks.Grid, Inks.Sketch, Line);
    }

    // An egg: wide at the temples, narrower at the jaw, the chin not pointed.
    private static (float X, float Y) Head(float t)
    {
        float down = MathF.Sin(t);
        float across = MathF.Cos(t);
        float wide = MathF.Sign(across) * MathF.Pow(MathF.Abs(across), down > 0 ? 0.88f : 0.95f);
        float jaw = down > 0 ? 1 - (0.16f * down * down) : 1;
        return (0.5f + (HalfHead * wide * jaw), CentreY + ((down > 0 ? 0.475f : 0.41f) * down));
    }

    private static void Eye(Picture picture, Area box, int side)
    {
        float centre = 0.5f + (side * 0.158f);
        float Lid(float t) => 0.472f + (0.022f * MathF.Sin(t) * (1 - (0.25f * MathF.Cos(t) * MathF.Cos(t))));
        Closed(picture, box, t => (centre + (0.068f * MathF.Cos(t)), Lid(t)), Inks.Paper);
        Closed(picture, box, t => (centre + (0.019f * MathF.Cos(t)), 0.471f + (0.019f * FaceRatio(box) * MathF.Sin(t))), Inks.Sketch);
    }

    private static float FaceRatio(Area box) => box.Width / box.Height;

    private static void Closed(Picture picture, Area box, Func<float, (float X, float Y)> at, Color fill) => picture.Polygon(
        [.. Enumerable.Range(0, Steps).Select(i => Pixel(box, at(2 * MathF.PI * i / Steps)))], fill, Inks.Sketch, Line);

    // One half of something that both halves of the face have: x from the middle outwards.
    private static void Stroke(Picture picture, Area box, int side, Func<float, (float Out, float Y)> at) => picture.Path(
        [.. Enumerable.Range(0, (Steps / 4) + 1).Select(i => at(i / (Steps / 4f))).Select(point => Pixel(box, (0.5f + (side * point.Out), point.Y)))],
        Inks.Sketch,
        Line);

    private static Pixel Pixel(Area box, (float X, float Y) point) => new(box.Left + (box.Width * point.X), box.Top + (box.Height * point.Y));
}
