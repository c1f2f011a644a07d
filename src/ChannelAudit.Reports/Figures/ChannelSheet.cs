using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures;

/// <summary>The picture of one channel: its trace, its worst trial, its spectrum, its baseline, its amplitude by trial, and the finding as title.</summary>
public static class ChannelSheet
{
    /// <summary>Draws the sheet as a PNG; the same result and size give the same bytes.</summary>
    /// <param name="recording">What is known about the recording.</param>
    /// <param name="channel">One of its channels; it has a view.</param>
    /// <param name="size">Width and height.</param>
    /// <exception cref="ArgumentException">When the channel has no view.</exception>
    public static byte[] Render(RecordingResult recording, ChannelResult channel, FigureSize size) => Png.Of(Compose(recording, channel, size));

    /// <summary>Lays out the sheet without drawing it.</summary>
    internal static Picture Compose(RecordingResult recording, ChannelResult channel, FigureSize size) =>
        SheetComposer.Compose(recording, channel, size);
}
