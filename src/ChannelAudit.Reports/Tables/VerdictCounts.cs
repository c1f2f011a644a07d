using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tables;

/// <summary>How many of something are pass, questionable and reject, by their final verdict.</summary>
/// <param name="Pass">Can be scored.</param>
/// <param name="Questionable">A person should look.</param>
/// <param name="Reject">Should not be scored.</param>
public sealed record VerdictCounts(int Pass, int Questionable, int Reject)
{
    /// <summary>All of them.</summary>
    public int Total => Pass + Questionable + Reject;

    /// <summary>The channels of recordings.</summary>
    public static VerdictCounts OfChannels(IEnumerable<RecordingResult> recordings) => Of(recordings
        .SelectMany(recording => recording.Channels.Select(channel => FinalVerdict.OfChannel(recording, channel))));

    /// <summary>The trials of one channel.</summary>
    public static VerdictCounts OfTrials(RecordingResult recording, ChannelResult channel) =>
        Of(channel.Cells.Select(cell => FinalVerdict.OfTrial(recording, channel, cell)));

    /// <summary>The trials of recordings, each counted once a channel.</summary>
    public static VerdictCounts OfTrials(IEnumerable<RecordingResult> recordings) => Of(recordings
        .SelectMany(recording => recording.Channels
            .SelectMany(channel => channel.Cells.Select(cell => FinalVerdict.OfTrial(recording, channel, cell)))));

    /// <summary>Several counts added up.</summary>
    public static VerdictCounts Sum(IEnumerable<VerdictCounts> counts) => counts.Aggregate(
        new VerdictCounts(0, 0, 0),
        (sum, one) => new VerdictCounts(sum.Pass + one.Pass, sum.Questionable + one.Questionable, sum.Reject + one.Reject));

    /// <summary>Verdicts counted.</summary>
    public static VerdictCounts Of(IEnumerable<Grade> verdicts)
    {
        int[] counts = new int[3];
        foreach (Grade verdict in verdicts)
        {
            counts[(int)verdict]++;
        }

        return new VerdictCounts(counts[(int)Grade.Pass], counts[(int)Grade.Questionable], counts[(int)Grade.Reject]);
    }
}
