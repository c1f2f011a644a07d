using ChannelAudit.Reports.Figures.Drawing;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Looks;

/// <summary>The shape of each verdict: disc, triangle, square with a cross, dashed frame with a bar.</summary>
internal static class VerdictShape
{
    /// <summary>Draws the shape inside a square box.</summary>
    /// <param name="picture">Where to.</param>
    /// <param name="box">The square.</param>
    /// <param name="look">Which shape.</param>
    /// <param name="hasOpenQuestions">Whether something was not assessed: a pass then has a broken line.</param>
    /// <param name="onDark">Whether it stands on the dark block of a reject.</param>
    public static void Draw(Picture picture, Area box, VerdictLook look, bool hasOpenQuestions = false, bool onDark = false)
    {
        float line = Math.Max(1.5f, box.Width / 10);
        switch (look)
        {
            case VerdictLook.Pass:
                picture.Disc(box, Inks.Paper, Inks.PassLine, line, hasOpenQuestions ? Dash.Dashed : Dash.Solid);
                break;
            case VerdictLook.Questionable:
                DrawTriangle(picture, box, line);
                break;
            case VerdictLook.Reject:
                DrawCrossedSquare(picture, box, onDark);
                break;
            default:
                picture.Fill(box, Inks.Paper);
                picture.Outline(box, Inks.OpenLine, line, Dash.Dotted);
                picture.Line(box.Left + (box.Width * 0.28f), box.CentreY, box.Right - (box.Width * 0.28f), box.CentreY, Inks.OpenLine, line * 1.2f);
                break;
        }
    }

    private static void DrawTriangle(Picture picture, Area box, float line)
    {
        Pixel[] corners = [new(box.CentreX, box.Top), new(box.Right, box.Bottom - line), new(box.Left, box.Bottom - line)];
        picture.Polygon(corners, Inks.QuestionableLine, Inks.QuestionableLine, 1);
    }

    private static void DrawCrossedSquare(Picture picture, Area box, bool onDark)
    {
        Color field = onDark ? Inks.Paper : Inks.RejectFill;
        Color cross = onDark ? Inks.RejectFill : Inks.Paper;
        picture.Fill(box, field);
        Area inner = box.Snapped().Inset(box.Width * 0.26f);
        float line = Math.Max(1.5f, box.Width / 8);
        picture.Line(inner.Left, inner.Top, inner.Right, inner.Bottom, cross, line);
        picture.Line(inner.Left, inner.Bottom, inner.Right, inner.Top, cross, line);
    }
}
