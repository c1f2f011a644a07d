using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures;

/// <summary>Says findings in a few words, for titles and labels of figures; the words are those of tables and pages.</summary>
public static class FigureText
{
    private const double WholeShare = 0.98;

    /// <summary>A finding in a few words with its most telling number: <c>50 Hz mains 14.2 µV</c>.</summary>
    /// <param name="recording">For the mains frequency.</param>
    /// <param name="channel">The channel that carries the finding; its name is left out where its partner is named.</param>
    /// <param name="finding">The finding.</param>
    public static string Of(RecordingResult recording, ChannelResult channel, Finding finding) =>
        PlainText.Of(IsShareOfTrials(finding) ? ShareOfTrials(channel, finding) : ReasonPhrase.Of(recording, channel, finding));

    /// <summary>When: <c>whole recording</c>, <c>from 02:10 to the end</c>, <c>up to 00:40</c> or <c>02:10 to 03:00</c>.</summary>
    /// <param name="fromS">Start in seconds.</param>
    /// <param name="toS">End in seconds.</param>
    /// <param name="durationS">Length of the recording in seconds.</param>
    /// <param name="isScattered">Whether it need not hold all through: then <c>between 02:10 and 03:00</c>, and nothing for the whole recording.</param>
    public static string When(double fromS, double toS, double durationS, bool isScattered = false)
    {
        double edgeS = durationS * (1 - WholeShare) / 2;
        bool fromStart = fromS <= edgeS;
        bool toEnd = toS >= durationS - edgeS;
        return (fromStart, toEnd) switch
        {
            (true, true) when isScattered => string.Empty,
            _ when isScattered => $"between {(fromStart ? "the start" : Quantities.Clock(fromS))} and {(toEnd ? "the end" : Quantities.Clock(toS))}",
            (true, true) => "whole recording",
            (true, false) => $"up to {Quantities.Clock(toS)}",
            (false, true) => $"from {Quantities.Clock(fromS)} to the end",
            _ => Quantities.Stretch(fromS, toS),
        };
    }

    /// <summary>A channel's verdict with its worst reason: <c>reject: 50 Hz mains 14.2 µV</c>.</summary>
    public static string Of(RecordingResult recording, ChannelResult channel)
    {
        VerdictLook look = VerdictLooks.Of(channel);
        string word = VerdictLooks.Word(look);
        return look switch
        {
            VerdictLook.NotAssessed => $"{word}: {WhyNot(channel)}",
            VerdictLook.Pass => channel.NotAssessed.IsEmpty ? word : $"{word}; not assessed: {Names(channel.NotAssessed.Select(question => question.Reason))}",
            _ => Reason(recording, channel) is { Length: > 0 } reason ? $"{word}: {reason}" : word,
        };
    }

    /// <summary>The worst reason of a channel in words, with the number of trials when not all show it; empty when it has none.</summary>
    public static string Reason(RecordingResult recording, ChannelResult channel)
    {
        if (WorstFinding(channel) is not { } finding)
        {
            return Names(channel.Reasons);
        }

        string words = Of(recording, channel, finding);
        int trials = channel.Cells.Count(cell => cell.Reasons.Contains(finding.Reason, StringComparer.Ordinal));
        bool areAllOfThem = finding.Trial is null && trials == channel.Cells.Length;
        return trials == 0 || areAllOfThem || IsShareOfTrials(finding) ? words : $"{words}, in {trials.Plain()} of {Quantities.Many(channel.Cells.Length, "trial")}";
    }

    /// <summary>The finding to name first: of the worst grade and of the channel's first reason, of the whole recording before those of trials.</summary>
    public static Finding? WorstFinding(ChannelResult channel)
    {
        // That many trials are bad says less than what is wrong with them.
        string? reason = channel.Reasons.FirstOrDefault(code => !string.Equals(code, ReasonLetters.ManyBadTrials, StringComparison.Ordinal));
        return channel.Findings
            .Concat(channel.Cells.SelectMany(cell => cell.Findings))
            .Where(finding => finding.Grade > Grade.Pass)
            .GroupBy(finding => (
                Grade: -(int)finding.Grade,
                IsOther: !string.Equals(finding.Reason, reason, StringComparison.Ordinal),
                IsTrial: finding.Trial is not null,
                IsShare: IsShareOfTrials(finding),
                Rank: ReasonLetters.Rank(finding.Reason)))
            .OrderBy(group => group.Key)
            .Select(ReasonPhrase.Worst)
            .FirstOrDefault();
    }

    /// <summary>Whether a finding is about how many trials are bad, which has no stretch of its own.</summary>
    internal static bool IsShareOfTrials(Finding finding) => Share(finding) is not null;

    /// <summary>Why nothing could be judged.</summary>
    internal static string WhyNot(ChannelResult channel) =>
        channel.NotAssessed.Concat(channel.Cells.SelectMany(cell => cell.NotAssessed)).FirstOrDefault() is { } first
            ? PlainText.Of(first.Cause)
            : "nothing could be measured";

    /// <summary>Reasons in words, each once.</summary>
    internal static string Names(IEnumerable<string> reasons) => PlainText.Of(ReasonWords.Names(reasons));

    private static string ShareOfTrials(ChannelResult channel, Finding finding)
    {
        Evidence share = Share(finding)!;
        string words = $"{Quantities.WithUnit(share.Value, share.Unit)} of the trials are rejected";
        string? commonest = channel.Cells
            .Where(cell => cell.Verdict == Grade.Reject && !cell.Reasons.IsEmpty)
            .GroupBy(cell => cell.Reasons[0], StringComparer.Ordinal)
            .OrderByDescending(group => group.Count())
            .ThenBy(group => ReasonLetters.Rank(group.Key))
            .FirstOrDefault()?.Key;
        return commonest is null ? words : $"{words}, mostly {Names([commonest])}";
    }

    private static Evidence? Share(Finding finding) =>
        finding.Evidence.FirstOrDefault(evidence => string.Equals(evidence.Measure, "bad_share", StringComparison.Ordinal));
}
