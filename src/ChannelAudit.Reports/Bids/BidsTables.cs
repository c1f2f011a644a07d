using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Bids;

/// <summary>The tables of one recording in a BIDS derivative.</summary>
internal static class BidsTables
{
    /// <summary><c>*_desc-quality_channels.tsv</c>: one row an audited channel.</summary>
    public static byte[] Channels(RecordingResult recording)
    {
        using TsvWriter table = new(BidsColumns.Channels);
        foreach (ChannelResult channel in recording.Channels)
        {
            Grade final = FinalVerdict.OfChannel(recording, channel);
            table.Label(channel.Label);
            table.Word("EMG");
            table.Word(Cells.Missing);
            table.Number(channel.RateHz);
            WriteStatus(table, final, channel.Verdict, channel.Reasons, FinalVerdict.DecisionOn(recording, channel));
            table.Label(channel.Name);
            WriteGrading(table, final, channel.Verdict, channel.Reasons, channel.NotAssessed);
            table.Count(channel.Cells.Length);
            table.Count(channel.Count(Grade.Pass));
            table.Count(channel.Count(Grade.Questionable));
            table.Count(channel.Count(Grade.Reject));
            table.EndRow();
        }

        return table.ToArray();
    }

    /// <summary><c>*_desc-quality_events.tsv</c>: one row a trial and audited channel, by onset.</summary>
    public static byte[] Events(RecordingResult recording)
    {
        using TsvWriter table = new(BidsColumns.Events);
        Dictionary<(int, string), CellResult> cells = recording.Channels
            .SelectMany(channel => channel.Cells.Select(cell => (Key: (cell.Trial, channel.Label), Cell: cell)))
            .DistinctBy(entry => entry.Key)
            .ToDictionary(entry => entry.Key, entry => entry.Cell);
        foreach (Trial trial in recording.Trials.OrderBy(trial => trial.OnsetS).ThenBy(trial => trial.Number))
        {
            foreach (ChannelResult channel in recording.Channels)
            {
                if (cells.TryGetValue((trial.Number, channel.Label), out CellResult? cell))
                {
                    WriteEvent(table, trial, channel, cell, FinalVerdict.DecisionOn(recording, channel, cell));
                }
            }
        }

        return table.ToArray();
    }

    private static void WriteEvent(TsvWriter table, Trial trial, ChannelResult channel, CellResult cell, StatedDecision? decision)
    {
        Grade final = decision?.Decision.Verdict ?? cell.Verdict;
        table.Number((double)trial.OnsetS);
        table.Number((double)trial.DurationS);
        table.Label(trial.Label);
        table.Label(channel.Label);
        table.Count(trial.Number);
        WriteStatus(table, final, cell.Verdict, cell.Reasons, decision);
        WriteGrading(table, final, cell.Verdict, cell.Reasons, cell.NotAssessed);
        table.EndRow();
    }

    // BIDS knows good and bad only, and what a person has yet to look at is neither.
    private static void WriteStatus(TsvWriter table, Grade final, Grade computed, ImmutableArray<string> reasons, StatedDecision? decision)
    {
        table.Word(final switch
        {
            Grade.Pass => "good",
            Grade.Reject => "bad",
            _ => Cells.Missing,
        });
        string why = string.Join(", ", reasons.Select(reason => $"{ReasonWords.For(reason).Name} ({reason})"));
        if (decision is { Decision: { } known })
        {
            // Without the name: a data set travels further than the ledger.
            table.Label($"{VerdictWords.Code(final)}: {DecisionWords.Short}: {known.Reason}; computed {VerdictWords.Code(computed)}{(why.Length == 0 ? string.Empty : $": {why}")}");
            return;
        }

        table.Label(final == Grade.Pass || why.Length == 0 ? null : $"{VerdictWords.Code(final)}: {why}");
    }

    private static void WriteGrading(TsvWriter table, Grade final, Grade computed, ImmutableArray<string> reasons, ImmutableArray<NotAssessed> missing)
    {
        table.Grade(final);
        table.Grade(computed);
        table.Codes(reasons);
        table.Codes(missing.Select(one => one.Reason));
    }
}
