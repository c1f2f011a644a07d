using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>Puts the parts of a channel sheet together: title, the whole trace, then two by two.</summary>
internal static class SheetComposer
{
    /// <summary>Lays out the whole picture.</summary>
    public static Picture Compose(RecordingResult recording, ChannelResult channel, FigureSize size)
    {
        SheetSubject subject = channel.View is { } view
            ? new SheetSubject(recording, channel, view, new RibbonScale(size))
            : throw new ArgumentException("The channel has no view: the audit was not asked for one.", nameof(channel));
        RibbonScale scale = subject.Scale;
        Picture picture = new(size.Width, size.Height);
        float top = SheetHeader.Draw(picture, subject, size.Width);

        // The trace gets the width and a third of what is left; the others share the rest.
        Area body = Area.Between(scale.Margin, top, size.Width - scale.Margin, size.Height - (scale.Margin / 2));
        float first = body.Top + (body.Height * 0.36f);
        float second = body.Top + (body.Height * 0.7f);
        float middle = body.CentreX;
        WholeTrace.Draw(picture, subject, Area.Between(body.Left, body.Top, body.Right, first - scale.Gap));
        CloseupTrace.Draw(picture, subject, Area.Between(body.Left, first, middle - scale.Gap, second - scale.Gap));
        SpectrumPlot.Draw(picture, subject, Area.Between(middle + scale.Gap, first, body.Right, second - scale.Gap));
        BaselinePlot.Draw(picture, subject, Area.Between(body.Left, second, middle - scale.Gap, body.Bottom));
        AmplitudePlot.Draw(picture, subject, Area.Between(middle + scale.Gap, second, body.Right, body.Bottom));
        return picture;
    }
}
