using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Pilot;

/// <summary>The reasons of a channel as a pilot weighs them: a pilot has few trials, so one that did not pass makes a site doubtful and no worse.</summary>
internal static class SiteReasons
{
    /// <summary>The reasons, worst first, in the fixed order of the codes.</summary>
    public static ImmutableArray<SiteReason> Of(ChannelResult channel) =>
    [
        .. channel.Reasons
            .Concat(channel.Cells.SelectMany(cell => cell.Reasons))
            .Distinct(StringComparer.Ordinal)
            .Select(code => Of(channel, code))
            .OrderByDescending(reason => reason.Grade)
            .ThenBy(reason => ReasonCode.All.IndexOf(reason.Code)),
    ];

    private static SiteReason Of(ChannelResult channel, string code)
    {
        Finding[] inTrials = [.. channel.Cells.SelectMany(cell => cell.Findings).Where(finding => IsOf(finding, code))];
        Finding[] whole = [.. channel.Findings.Where(finding => IsOf(finding, code) && !IsShare(finding))];
        Grade inAll = whole.Length > 0 ? whole.Max(finding => finding.Grade) : Grade.Pass;
        bool isOfChannel = channel.Reasons.Contains(code, StringComparer.Ordinal);
        Grade grade = isOfChannel && whole.Length == 0 ? channel.Verdict : inAll == Grade.Pass ? Grade.Questionable : inAll;
        string text = whole.Concat(inTrials).OrderByDescending(finding => finding.Grade).Select(finding => finding.Text).FirstOrDefault()
            ?? channel.NotAssessed.Concat(channel.Cells.SelectMany(cell => cell.NotAssessed)).Where(open => string.Equals(open.Reason, code, StringComparison.Ordinal)).Select(open => open.Cause).FirstOrDefault()
            ?? code;
        return new SiteReason(code, grade, !isOfChannel, text);
    }

    private static bool IsOf(Finding finding, string code) => string.Equals(finding.Reason, code, StringComparison.Ordinal);

    private static bool IsShare(Finding finding) => finding.Evidence.Any(one => one.Measure.StartsWith("bad_share", StringComparison.Ordinal));
}
