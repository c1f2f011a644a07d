using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Pair;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures;

/// <summary>The picture of two channels that may be joined: correlation over time, one moment of both, coherence, and what joined sites and crosstalk look like.</summary>
public static class PairSheet
{
    /// <summary>Draws the sheet as a PNG; the same result and size give the same bytes.</summary>
    /// <param name="recording">What is known about the recording.</param>
    /// <param name="pair">One of its pairs; it has a view.</param>
    /// <param name="size">Width and height.</param>
    /// <exception cref="ArgumentException">When the pair has no view.</exception>
    public static byte[] Render(RecordingResult recording, PairResult pair, FigureSize size) => Png.Of(Compose(recording, pair, size));

    /// <summary>Lays out the sheet without drawing it.</summary>
    internal static Picture Compose(RecordingResult recording, PairResult pair, FigureSize size) => PairComposer.Compose(recording, pair, size);
}
