using ChannelAudit.Reports.Figures.Drawing;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>The picture of a cell: its trace with the window, other channels below it on the same time axis, and the spectrum of the window beside them.</summary>
internal static class CellFigure
{
    private const float TextSize = 14;
    private const float Margin = 8;
    private const float SpectrumShare = 0.31f;

    // The cell's own trace is higher than each of the others.
    private const float OwnWeight = 2.2f;

    /// <summary>Draws the picture as a PNG; the same scene and look give the same bytes.</summary>
    public static byte[] Render(CellScene scene, CellLook look) => Png.Of(Compose(scene, look.Clamped()));

    /// <summary>Lays the picture out without drawing it.</summary>
    internal static Picture Compose(CellScene scene, CellLook look)
    {
        Picture picture = new(look.Width, look.Height);
        CellInks inks = look.IsDark ? CellInks.Dark : CellInks.Light;
        picture.Fill(new Area(0, 0, look.Width, look.Height), inks.Paper);
        CellPen pen = new(picture, inks, new TextStyle(TextSize * look.Scale, Bold: false, inks.Quiet), look.Scale);
        float margin = Margin * look.Scale;
        float split = MathF.Round(look.Width * (1 - SpectrumShare));
        DrawTraces(pen, scene, Area.Between(margin, margin, split - margin, look.Height - margin));
        CellSpectrumPanel.Draw(pen, scene, Area.Between(split + margin, margin, look.Width - margin, look.Height - margin));
        return picture;
    }

    private static void DrawTraces(CellPen pen, CellScene scene, Area outer)
    {
        float times = pen.LineHeight + (4 * pen.Scale);
        float lanes = CellMarkLanes.Height(pen, scene);
        float unit = (outer.Height - times - lanes) / (OwnWeight + scene.Traces.Length - 1);
        float top = outer.Top;
        for (int i = 0; i < scene.Traces.Length; i++)
        {
            bool isLast = i == scene.Traces.Length - 1;
            float height = (i == 0 ? (OwnWeight * unit) + lanes : unit) + (isLast ? times : 0);
            CellTracePanel.Draw(pen, scene, i, new Area(outer.Left, top, outer.Width, height), hasTimes: isLast);
            top += height;
        }
    }
}
