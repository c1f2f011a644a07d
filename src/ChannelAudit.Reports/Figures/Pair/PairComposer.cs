using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures.Pair;

/// <summary>Puts the parts of a pair sheet together: title and reasoning, correlation over time, two by two, and the patterns to compare with.</summary>
internal static class PairComposer
{
    /// <summary>Lays out the whole picture.</summary>
    public static Picture Compose(RecordingResult recording, PairResult pair, FigureSize size)
    {
        PairSubject subject = pair.View is { } view
            ? new PairSubject(recording, pair, view, new RibbonScale(size))
            : throw new ArgumentException("The pair has no view: the audit was not asked for one, or the pair is not suspect.", nameof(pair));
        RibbonScale scale = subject.Scale;
        Picture picture = new(size.Width, size.Height);
        float top = PairHeader.Draw(picture, subject, size.Width);
        Area body = Area.Between(scale.Margin, top, size.Width - scale.Margin, size.Height - (scale.Margin / 2));

        // In a small picture the numbers need most of the room.
        bool isSmall = body.Height < 500;
        float first = body.Top + (body.Height * (isSmall ? 0.31f : 0.32f));
        float second = body.Top + (body.Height * (isSmall ? 0.57f : 0.6f));
        float middle = body.CentreX;
        CorrelationPlot.Draw(picture, subject, Area.Between(body.Left, body.Top, body.Right, first - scale.Gap));
        MomentTraces.Draw(picture, subject, Area.Between(body.Left, first, middle - scale.Gap, second - scale.Gap));
        CoherencePlot.Draw(picture, subject, Area.Between(middle + scale.Gap, first, body.Right, second - scale.Gap));
        PatternTable.Draw(picture, subject, Area.Between(body.Left, second, body.Right, body.Bottom));
        return picture;
    }
}
