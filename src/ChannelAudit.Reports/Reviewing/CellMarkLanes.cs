using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Verdicts;
using ScottPlot;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>Findings above a trace, a lane a reason: its letter on the left, a bar over the time that it holds. The trace itself stays clear of both.</summary>
/// <remarks>A reject has a full bar, a questionable a frame. Behind the trace only samples that are at fault themselves are tinted.</remarks>
internal static class CellMarkLanes
{
    // What else was found stands beside the picture in words.
    private const int MostLanes = 3;
    private const float BarHeight = 7;

    /// <summary>The reasons that have a lane, worst first; those that the picture shows nothing of have none.</summary>
    public static ImmutableArray<string> Letters(CellScene scene) =>
    [
        .. Shown(scene)
            .GroupBy(mark => mark.Letter, StringComparer.Ordinal)
            .OrderByDescending(group => group.Max(mark => mark.Grade))
            .Take(MostLanes)
            .Select(group => group.Key),
    ];

    /// <summary>The height of all lanes.</summary>
    public static float Height(CellPen pen, CellScene scene) => Letters(scene).Length * LaneHeight(pen);

    /// <summary>Draws the lanes.</summary>
    /// <param name="pen">With what.</param>
    /// <param name="scene">What is shown.</param>
    /// <param name="field">The field of the trace, below them.</param>
    /// <param name="times">The time axis, counted from what the scene calls zero.</param>
    public static void Draw(CellPen pen, CellScene scene, Area field, TimeAxis times)
    {
        ImmutableArray<string> letters = Letters(scene);
        float height = LaneHeight(pen);
        float top = field.Top - (letters.Length * height);
        foreach (string letter in letters)
        {
            CellMarking[] marks = [.. Shown(scene).Where(mark => string.Equals(mark.Letter, letter, StringComparison.Ordinal)).OrderBy(mark => mark.Grade)];
            TextStyle style = pen.Note with { Bold = true, Color = InkOf(pen, marks[^1]) };
            float left = field.Left - (6 * pen.Scale) - TextMeasure.Width(letter, style);
            pen.Picture.Text(letter, style, MathF.Round(left), MathF.Round(top));
            foreach (CellMarking mark in marks)
            {
                DrawBar(pen, mark, Across(pen, scene, mark, times, MathF.Round(top + ((height - (BarHeight * pen.Scale)) / 2)), BarHeight * pen.Scale, field.Right));
            }

            top += height;
        }
    }

    /// <summary>Tints the samples that are at fault themselves.</summary>
    public static void DrawTints(CellPen pen, CellScene scene, Area field, TimeAxis times)
    {
        foreach (CellMarking mark in Shown(scene).Where(mark => mark.IsExact).OrderBy(mark => mark.Grade))
        {
            pen.Picture.Fill(
                Across(pen, scene, mark, times, field.Top, field.Height, field.Right), mark.Grade == Grade.Reject ? pen.Inks.RejectTint : pen.Inks.QuestionableTint);
        }
    }

    private static void DrawBar(CellPen pen, CellMarking mark, Area box)
    {
        if (mark.Grade == Grade.Reject)
        {
            pen.Picture.Fill(box, pen.Inks.Reject);
            return;
        }

        pen.Picture.Fill(box, pen.Inks.QuestionableTint);
        pen.Picture.Outline(box, pen.Inks.Questionable, 1.5f * pen.Scale);
    }

    // Never less than can be seen.
    private static Area Across(CellPen pen, CellScene scene, CellMarking mark, TimeAxis times, float top, float height, float right)
    {
        float from = Math.Min(times.X(mark.FromS - scene.ZeroS), right - pen.Scale);
        return Area.Between(from, top, Math.Max(times.X(mark.ToS - scene.ZeroS), from + pen.Scale), top + height);
    }

    private static IEnumerable<CellMarking> Shown(CellScene scene) => scene.Marks.Where(mark => mark.ToS > scene.FromS && mark.FromS < scene.ToS);

    private static Color InkOf(CellPen pen, CellMarking mark) => mark.Grade == Grade.Reject ? pen.Inks.Reject : pen.Inks.Questionable;

    private static float LaneHeight(CellPen pen) => pen.LineHeight;
}
