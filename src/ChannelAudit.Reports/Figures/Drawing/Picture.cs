using ChannelAudit.Reports.Figures.Typefaces;
using ScottPlot;
using SkiaSharp;

namespace ChannelAudit.Reports.Figures.Drawing;

/// <summary>What is to be drawn, in order and in pixels; the places of all texts are known before anything is drawn.</summary>
/// <remarks>Layout puts _marks in; <see cref="PictureLayer"/> draws them on a ScottPlot figure; tests look at the _labels.</remarks>
internal sealed class Picture(int width, int height)
{
    private readonly List<Action<SKCanvas, Paint>> _marks = [];
    private readonly List<Label> _labels = [];

    public int Width { get; } = width;

    public int Height { get; } = height;

    /// <summary>All texts with their places, in the order in which they are drawn.</summary>
    public IReadOnlyList<Label> Labels => _labels;

    public void Fill(Area box, Color color)
    {
        PixelRect rect = box.Snapped().ToPixelRect();
        _marks.Add((canvas, paint) => ScottPlot.Drawing.FillRectangle(canvas, rect, paint, new FillStyle { Color = color, AntiAlias = false }));
    }

    /// <summary>Diagonal stripes inside a box.</summary>
    public void Hatch(Area box, Color color, float spacing, float lineWidth)
    {
        Area inside = box.Snapped();
        _marks.Add((canvas, paint) =>
        {
            canvas.Save();
            canvas.ClipRect(new SKRect(inside.Left, inside.Top, inside.Right, inside.Bottom));

            // Stripes hang on the page, not on the box, so that neighbours continue each other.
            float first = MathF.Floor((inside.Left + inside.Top) / spacing) * spacing;
            for (float sum = first; sum <= inside.Right + inside.Bottom; sum += spacing)
            {
                DrawLine(canvas, paint, (sum - inside.Bottom, inside.Bottom), (sum - inside.Top, inside.Top), Style(color, lineWidth, Dash.Solid));
            }

            canvas.Restore();
        });
    }

    /// <summary>Thin upright lines inside a box, one at its left edge and then at equal steps; time of which nothing is stored.</summary>
    public void Uprights(Area box, Color color, float spacing)
    {
        Area inside = box.Snapped();
        for (float left = inside.Left; left < inside.Right; left += spacing)
        {
            Fill(new Area(left, inside.Top, 1, inside.Height), color);
        }
    }

    public void Outline(Area box, Color color, float lineWidth, Dash dash = Dash.Solid)
    {
        PixelRect rect = box.Snapped().Inset(lineWidth / 2).ToPixelRect();
        LineStyle style = Style(color, lineWidth, dash);
        _marks.Add((canvas, paint) => ScottPlot.Drawing.DrawRectangle(canvas, rect, paint, style));
    }

    public void Line(float x1, float y1, float x2, float y2, Color color, float lineWidth, Dash dash = Dash.Solid)
    {
        LineStyle style = Style(color, lineWidth, dash);
        _marks.Add((canvas, paint) => DrawLine(canvas, paint, (x1, y1), (x2, y2), style));
    }

    /// <summary>A line through points; a point that is not a number breaks it.</summary>
    public void Path(IReadOnlyList<Pixel> points, Color color, float lineWidth)
    {
        LineStyle style = Style(color, lineWidth, Dash.Solid);
        _marks.Add((canvas, paint) =>
        {
            for (int from = 0; from < points.Count;)
            {
                int to = from;
                while (to < points.Count && float.IsFinite(points[to].Y))
                {
                    to++;
                }

                if (to - from > 1)
                {
                    ScottPlot.Drawing.DrawPath(canvas, paint, points.Skip(from).Take(to - from), style);
                }

                from = to + 1;
            }
        });
    }

    /// <summary>Upright bars one pixel wide, side by side, as a trace is drawn; a bar that is not a number is left out.</summary>
    /// <param name="left">Left edge of the first bar.</param>
    /// <param name="bars">Top and bottom of each.</param>
    /// <param name="color">The colour.</param>
    public void Bars(float left, IReadOnlyList<(float Top, float Bottom)> bars, Color color) => _marks.Add((canvas, paint) =>
    {
        FillStyle style = new() { Color = color, AntiAlias = false };
        for (int i = 0; i < bars.Count; i++)
        {
            if (float.IsFinite(bars[i].Top))
            {
                ScottPlot.Drawing.FillRectangle(canvas, new Area(left + i, bars[i].Top, 1, bars[i].Bottom - bars[i].Top).Snapped().ToPixelRect(), paint, style);
            }
        }
    });

    public void Polygon(Pixel[] corners, Color fill, Color line, float lineWidth, Dash dash = Dash.Solid)
    {
        LineStyle style = Style(line, lineWidth, dash);
        Pixel[] closed = [.. corners, corners[0]];
        _marks.Add((canvas, paint) =>
        {
            ScottPlot.Drawing.FillPath(canvas, paint, closed, new FillStyle { Color = fill });
            ScottPlot.Drawing.DrawPath(canvas, paint, closed, style, close: true);
        });
    }

    public void Disc(Area box, Color fill, Color line, float lineWidth, Dash dash = Dash.Solid)
    {
        PixelRect rect = box.Inset(lineWidth / 2).ToPixelRect();
        LineStyle style = Style(line, lineWidth, dash);
        _marks.Add((canvas, paint) =>
        {
            ScottPlot.Drawing.FillOval(canvas, paint, new FillStyle { Color = fill }, rect);
            ScottPlot.Drawing.DrawOval(canvas, paint, style, rect);
        });
    }

    /// <summary>One shape at many points, with one fill and one line; hundreds of them cost little more than one.</summary>
    /// <param name="centres">The points.</param>
    /// <param name="corners">Corners of the shape around its point; none for a disc.</param>
    /// <param name="size">Width of the shape.</param>
    /// <param name="fill">Its fill.</param>
    /// <param name="line">Its line.</param>
    public void Stamps(IReadOnlyList<Pixel> centres, IReadOnlyList<Pixel> corners, float size, Color fill, Color line) => _marks.Add((canvas, _) =>
    {
        using SKPaint inside = new() { Color = fill.ToSKColor(), IsAntialias = true, Style = SKPaintStyle.Fill };
        using SKPaint edge = new() { Color = line.ToSKColor(), IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 1.5f };
        using SKPath shape = new();
        if (corners.Count == 0)
        {
            shape.AddCircle(0, 0, size / 2);
        }
        else
        {
            shape.AddPoly([.. corners.Select(corner => new SKPoint(corner.X, corner.Y))]);
        }

        foreach (Pixel centre in centres)
        {
            canvas.Save();
            canvas.Translate(centre.X, centre.Y);
            canvas.DrawPath(shape, inside);
            canvas.DrawPath(shape, edge);
            canvas.Restore();
        }
    });

    /// <summary>A line of text whose box starts at a point; returns its box.</summary>
    public Area Text(string text, TextStyle style, float left, float top)
    {
        Area box = new(left, top, TextMeasure.Width(text, style), TextMeasure.LineHeight(style));
        if (text.Length == 0)
        {
            return box;
        }

        _labels.Add(new Label(text, box, style));
        _marks.Add((canvas, _) => DrawText(canvas, text, style, box));
        return box;
    }

    /// <summary>A line of text around a point; returns its box.</summary>
    public Area TextAround(string text, TextStyle style, float centreX, float centreY) => Text(
        text,
        style,
        MathF.Round(centreX - (TextMeasure.Width(text, style) / 2)),
        MathF.Round(centreY - (TextMeasure.LineHeight(style) / 2)));

    /// <summary>Draws everything.</summary>
    public void Draw(SKCanvas canvas, Paint paint)
    {
        foreach (Action<SKCanvas, Paint> mark in _marks)
        {
            mark(canvas, paint);
        }
    }

    private static void DrawLine(SKCanvas canvas, Paint paint, (float X, float Y) from, (float X, float Y) to, LineStyle style) =>
        ScottPlot.Drawing.DrawLine(canvas, paint, new Pixel(from.X, from.Y), new Pixel(to.X, to.Y), style);

    private static void DrawText(SKCanvas canvas, string text, TextStyle style, Area box)
    {
        using SKPaint ink = new() { Color = style.Color.ToSKColor(), IsAntialias = true };
        using SKFont font = FigureFont.Create(style.Size, style.Bold);
        canvas.DrawText(text, box.Left, MathF.Round(box.Top + TextMeasure.Ascent(style)), font, ink);
    }

    private static LineStyle Style(Color color, float lineWidth, Dash dash) => new(lineWidth, color, dash switch
    {
        Dash.Dashed => new LinePattern([4 * lineWidth, 2.5f * lineWidth], 0, "dashed"),
        Dash.Dotted => new LinePattern([1.5f * lineWidth, 1.5f * lineWidth], 0, "dotted"),
        _ => LinePattern.Solid,
    });
}
