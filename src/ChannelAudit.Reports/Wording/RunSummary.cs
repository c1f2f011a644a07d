using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Tables;

namespace ChannelAudit.Reports.Wording;

/// <summary>A run in one or two sentences.</summary>
public static class RunSummary
{
    /// <summary>Channels by verdict, then what could not be read.</summary>
    public static string Of(RunDigest digest)
    {
        string where = $"{Quantities.Many(digest.Channels.Total, "channel")} in {Quantities.Many(digest.Recordings.Length, "recording")}";
        string verdicts = $"{where}: {InWords(digest.Channels)}.";
        if (digest.Recordings.Any(recording => recording.Channels.Any(channel => channel.Verdict != channel.Computed)))
        {
            verdicts += $" By rule alone, before decisions of persons: {InWords(digest.ComputedChannels)}.";
        }

        return digest.Unread.IsEmpty ? verdicts : $"{verdicts} {Quantities.Many(digest.Unread.Length, "recording")} could not be read.";
    }

    /// <summary><c>2 reject, 1 questionable, 6 pass</c>, worst first; what does not occur is left out.</summary>
    public static string InWords(VerdictCounts counts)
    {
        string[] parts =
        [
            .. new[] { (counts.Reject, "reject"), (counts.Questionable, "questionable"), (counts.Pass, "pass") }
                .Where(part => part.Item1 > 0)
                .Select(part => $"{part.Item1.Plain()} {part.Item2}"),
        ];
        return parts.Length == 0 ? "none" : string.Join(", ", parts);
    }
}
