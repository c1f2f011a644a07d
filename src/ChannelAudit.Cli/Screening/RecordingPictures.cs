using System.Collections.Immutable;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Output;
using ChannelAudit.Results;

namespace ChannelAudit.Cli.Screening;

/// <summary>Draws the pictures of a recording.</summary>
internal static class RecordingPictures
{
    /// <summary>Draws them, in the order in which they are listed.</summary>
    /// <param name="recording">The result, with what pictures need.</param>
    /// <param name="figures">Which are asked for.</param>
    /// <param name="cancel">Ends it.</param>
    public static ImmutableArray<FigureFile> Of(RecordingResult recording, FigureChoice figures, CancellationToken cancel)
    {
        if (figures == FigureChoice.None)
        {
            return [];
        }

        List<FigureFile> drawn = [new FigureFile(FigureFile.SessionRibbon, SessionRibbon.Render(recording, FigureSize.Full))];
        foreach (ChannelResult channel in recording.Channels.Where(channel => channel.View is not null))
        {
            cancel.ThrowIfCancellationRequested();
            drawn.Add(new FigureFile(FigureFile.SheetOf(recording, channel), ChannelSheet.Render(recording, channel, FigureSize.Full)));
        }

        foreach (PairResult pair in recording.Pairs.Where(pair => pair.View is not null))
        {
            cancel.ThrowIfCancellationRequested();
            drawn.Add(new FigureFile(FigureFile.SheetOf(recording, pair), PairSheet.Render(recording, pair, FigureSize.Full)));
        }

        return [.. drawn];
    }
}
