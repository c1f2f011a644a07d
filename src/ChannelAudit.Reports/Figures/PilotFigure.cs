using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Face;

namespace ChannelAudit.Reports.Figures;

/// <summary>The picture of a pilot, to be read from two metres: a face with the sites and bridges, the answer, each task's trace, what to do next.</summary>
public static class PilotFigure
{
    /// <summary>Draws it as a PNG, 1600 pixels wide and 1000 high, higher when the list of steps is long; the same report gives the same bytes.</summary>
    /// <param name="report">The pilot.</param>
    public static byte[] Render(PilotReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return Png.Of(Compose(report));
    }

    /// <summary>Lays it out without drawing it.</summary>
    internal static Picture Compose(PilotReport report) => PilotComposer.Compose(report);
}
