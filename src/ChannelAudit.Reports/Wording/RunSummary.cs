using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Wording;

/// <summary>A run in one or two sentences.</summary>
public static class RunSummary
{
    /// <summary>Channels by verdict, then what could not be read.</summary>
    public static string Of(AuditRun run)
    {
        VerdictCounts channels = VerdictCounts.OfChannels(run.Recordings);
        string where = $"{Quantities.Many(channels.Total, "channel")} in {Quantities.Many(run.Recordings.Length, "recording")}";
        string verdicts = $"{where}: {InWords(channels)}.";
        return run.Unread.IsEmpty ? verdicts : $"{verdicts} {Quantities.Many(run.Unread.Length, "recording")} could not be read.";
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
