using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures;

/// <summary>The picture of a whole recording: one ribbon a channel on the true time axis, trials as blocks with verdict and reason.</summary>
/// <remarks>
/// Rows become thinner as channels become more, down to one line of text each; then the picture grows beyond the height asked for. With
/// few channels it is lower than asked for. Beyond 64 channels the worst are drawn and a line says how many are not.
/// </remarks>
public static class SessionRibbon
{
    /// <summary>Draws the ribbon as a PNG; the same result and size give the same bytes.</summary>
    /// <param name="recording">What is known about the recording.</param>
    /// <param name="size">Width, and the height within which rows are as high as they can be.</param>
    public static byte[] Render(RecordingResult recording, FigureSize size) => Png.Of(Compose(recording, size));

    /// <summary>Lays out the ribbon without drawing it.</summary>
    internal static Picture Compose(RecordingResult recording, FigureSize size) => RibbonComposer.Compose(recording, size);
}
