using ScottPlot;

namespace ChannelAudit.Reports.Figures.Drawing;

/// <summary>Puts a picture on a ScottPlot figure, pixel for pixel.</summary>
internal sealed class PictureLayer(Picture picture) : IPlottable
{
    public bool IsVisible { get; set; } = true;

    public IAxes Axes { get; set; } = new Axes();

    public IEnumerable<LegendItem> LegendItems => LegendItem.None;

    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    public void Render(RenderPack rp) => picture.Draw(rp.Canvas, rp.Paint);
}
