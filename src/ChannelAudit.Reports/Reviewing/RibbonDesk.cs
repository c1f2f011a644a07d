using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>The ribbon above a cell: every trial of its recording, channel by channel.</summary>
public static class RibbonDesk
{
    /// <summary>The ribbon of a cell's recording; null in a blind review.</summary>
    /// <param name="book">The cells.</param>
    /// <param name="number">The number of a cell, from 1.</param>
    public static RibbonView? Of(ReviewBook book, int number)
    {
        ArgumentNullException.ThrowIfNull(book);
        if (book.Options.IsBlind)
        {
            return null;
        }

        int recording = book.Cells[number - 1].Recording;
        RecordingResult result = book.BareOf(recording);
        Dictionary<int, Trial> trials = result.Trials.ToDictionary(trial => trial.Number);
        return new RibbonView(
            result.Id,
            result.DurationS,
            [.. result.Channels.Select((channel, place) => new RibbonChannel(
                channel.Name,
                VerdictWords.Code(FinalVerdict.OfChannel(result, channel)),
                [.. channel.Cells.Select((cell, at) => Cell(book, new ReviewCell(recording, place, at), result, channel, cell, trials[cell.Trial]))]))]);
    }

    private static RibbonCell Cell(ReviewBook book, ReviewCell place, RecordingResult result, ChannelResult channel, CellResult cell, Trial trial) => new(
        book.NumberOf(place),
        trial.Number,
        (double)trial.WindowFromS,
        (double)trial.WindowToS,
        VerdictWords.Code(FinalVerdict.OfTrial(result, channel, cell)),
        FinalVerdict.DecisionOn(result, channel, cell) is not null);
}
