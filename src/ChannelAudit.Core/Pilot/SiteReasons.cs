using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Pilot;

/// <summary>The reasons of a channel as a pilot weighs them: a pilot has few trials, so one that did not pass makes a site doubtful and no worse.</summary>
internal static class SiteReasons
{
    /// <summary>The reasons, worst first, in the fixed order of the codes.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="durationS">Length of the recording in seconds.</param>
    public static ImmutableArray<SiteReason> Of(ChannelResult channel, double durationS) =>
    [
        .. channel.Reasons
            .Concat(channel.Cells.SelectMany(cell => cell.Reasons))
            .Distinct(StringComparer.Ordinal)
            .Select(code => Of(channel, code, durationS))
            .OrderByDescending(reason => reason.Grade)
            .ThenBy(reason => ReasonCode.All.IndexOf(reason.Code)),
    ];

    private static SiteReason Of(ChannelResult channel, string code, double durationS)
    {
        Finding[] inTrials = [.. channel.Cells.SelectMany(cell => cell.Findings).Where(finding => IsOf(finding, code))];
        Finding[] whole = [.. channel.Findings.Where(finding => IsOf(finding, code) && !finding.CountsTrials)];
        Grade inAll = whole.Length > 0 ? whole.Max(finding => finding.Grade) : Grade.Pass;
        bool isOfChannel = channel.Reasons.Contains(code, StringComparer.Ordinal);
        Grade grade = isOfChannel && whole.Length == 0 ? channel.Verdict : inAll == Grade.Pass ? Grade.Questionable : inAll;
        Finding? said = whole.Concat(inTrials).MaxBy(finding => finding.Grade);
        string text = said?.Text ?? WhyOpen(channel, code) ?? code;
        return new SiteReason(code, grade, !isOfChannel, text, said?.Seen ?? text) { Share = ShareOf(channel, code, whole, durationS), Finding = said };
    }

    // A fault that holds all through spoils every trial; what holds for a while, or in some trials, spoils that part.
    private static double ShareOf(ChannelResult channel, string code, Finding[] whole, double durationS)
    {
        double ofTime = whole.Length == 0 || durationS <= 0 ? 0 : whole.Max(finding => finding.ToS - finding.FromS) / durationS;
        double trials = channel.Cells.Count(cell => cell.Reasons.Contains(code, StringComparer.Ordinal));
        double ofTrials = channel.Cells.IsEmpty ? 0 : trials / channel.Cells.Length;
        double most = Math.Max(ofTime, ofTrials);
        return most > 0 ? Math.Min(1, most) : 1;
    }

    private static string? WhyOpen(ChannelResult channel, string code) => channel.NotAssessed
        .Concat(channel.Cells.SelectMany(cell => cell.NotAssessed))
        .FirstOrDefault(open => string.Equals(open.Reason, code, StringComparison.Ordinal))?.Cause;

    private static bool IsOf(Finding finding, string code) => string.Equals(finding.Reason, code, StringComparison.Ordinal);
}
