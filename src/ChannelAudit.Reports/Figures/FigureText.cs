using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;
using static ChannelAudit.Reports.Figures.FigureNumbers;

namespace ChannelAudit.Reports.Figures;

/// <summary>Says findings in a few words, for titles and labels of figures.</summary>
public static class FigureText
{
    private const double WholeShare = 0.98;

    /// <summary>A finding in a few words with its most telling number: <c>mains 50 Hz, 14 µV</c>.</summary>
    /// <param name="recording">For the mains frequency.</param>
    /// <param name="channel">The channel that carries the finding; for the partner's name and its other measures.</param>
    /// <param name="finding">The finding.</param>
    public static string Of(RecordingResult recording, ChannelResult channel, Finding finding) => finding.Reason switch
    {
        _ when IsShareOfTrials(finding) => ShareOfTrials(channel, finding),
        ReasonCode.LineNoise => WithNumber($"mains {Short(recording.Mains.NominalHz)} Hz", finding, "line_rms", "line_ratio"),
        ReasonCode.NarrowBand => WithNumber(NarrowPeak(channel, finding), finding, "narrow_rms", "narrow_ratio"),
        ReasonCode.Bridge => JoinedWith(channel, finding),
        ReasonCode.Clipping => WithNumber("clipping", finding, "clipped", "clipped_run", "peak_use"),
        ReasonCode.Flatline => WithNumber("flat", finding, "flat_run", "flat"),
        ReasonCode.Dropout => WithNumber("samples missing", finding, "gap", "missing"),
        ReasonCode.Drift => Drift(finding),
        ReasonCode.LowFrequency => WithNumber("motion", finding, "lowfreq_rms", "lowfreq_ratio"),
        ReasonCode.Pops => WithNumber("pops", finding, "pop_rate", "pops"),
        ReasonCode.NoiseFloor => WithNumber("hiss at rest", finding, "rest_rms"),
        ReasonCode.WeakResponse => WithNumber("weak response", finding, "contraction_snr"),
        ReasonCode.LeadSwap => "another site answers the task",
        ReasonCode.UnusableInput => "input cannot be judged",
        _ => finding.Evidence.IsEmpty ? PlainText.Of(finding.Text) : WithNumber(finding.Reason, finding),
    };

    /// <summary>When: <c>whole recording</c>, <c>from 02:10 to the end</c>, <c>up to 00:40</c> or <c>02:10 to 03:00</c>.</summary>
    /// <param name="fromS">Start in seconds.</param>
    /// <param name="toS">End in seconds.</param>
    /// <param name="durationS">Length of the recording in seconds.</param>
    public static string When(double fromS, double toS, double durationS)
    {
        double edgeS = durationS * (1 - WholeShare) / 2;
        bool fromStart = fromS <= edgeS;
        bool toEnd = toS >= durationS - edgeS;
        return (fromStart, toEnd) switch
        {
            (true, true) => "whole recording",
            (true, false) => $"up to {Clock(toS)}",
            (false, true) => $"from {Clock(fromS)} to the end",
            _ => $"{Clock(fromS)} to {Clock(toS)}",
        };
    }

    /// <summary>A channel's verdict with its worst reason: <c>reject: mains 50 Hz, 14 µV</c>.</summary>
    public static string Of(RecordingResult recording, ChannelResult channel)
    {
        VerdictLook look = VerdictLooks.Of(channel);
        string word = VerdictLooks.Word(look);
        return look switch
        {
            VerdictLook.NotAssessed => $"{word}: {WhyNot(channel)}",
            VerdictLook.Pass => channel.NotAssessed.IsEmpty ? word : $"{word}; not assessed: {Questions(channel)}",
            _ => Reason(recording, channel) is { Length: > 0 } reason ? $"{word}: {reason}" : word,
        };
    }

    /// <summary>The worst reason of a channel in words, with the number of trials when only trials show it; empty when it has none.</summary>
    public static string Reason(RecordingResult recording, ChannelResult channel)
    {
        if (WorstFinding(channel) is not { } finding)
        {
            return string.Join(", ", channel.Reasons.Select(ReasonLetters.NameOf));
        }

        string words = Of(recording, channel, finding);
        int trials = finding.Trial is null ? 0 : channel.Cells.Count(cell => cell.Reasons.Contains(finding.Reason, StringComparer.Ordinal));
        return trials == 0 ? words : $"{words}, in {Whole(trials)} of {Count(channel.Cells.Length, "trial")}";
    }

    /// <summary>The finding behind a channel's first reason: the worst, of the whole recording before those of trials, the earliest.</summary>
    public static Finding? WorstFinding(ChannelResult channel)
    {
        IEnumerable<Finding> all = channel.Findings.Concat(channel.Cells.SelectMany(cell => cell.Findings)).Where(finding => finding.Grade > Grade.Pass);

        // That many trials are bad says less than what is wrong with them.
        string? reason = channel.Reasons.FirstOrDefault(code => !string.Equals(code, ReasonLetters.ManyBadTrials, StringComparison.Ordinal));
        return all
            .OrderByDescending(finding => finding.Grade)
            .ThenByDescending(finding => reason is not null && string.Equals(finding.Reason, reason, StringComparison.Ordinal))
            .ThenBy(finding => finding.Trial is not null)
            .ThenBy(IsShareOfTrials)
            .ThenBy(finding => ReasonLetters.Rank(finding.Reason))
            .ThenBy(finding => finding.FromS)
            .FirstOrDefault();
    }

    /// <summary>Whether a finding is about how many trials are bad, which has no stretch of its own.</summary>
    internal static bool IsShareOfTrials(Finding finding) => Value(finding, "bad_share") is not null;

    /// <summary>Why nothing could be judged.</summary>
    internal static string WhyNot(ChannelResult channel) =>
        channel.NotAssessed.Concat(channel.Cells.SelectMany(cell => cell.NotAssessed)).FirstOrDefault() is { } first
            ? PlainText.Of(first.Cause)
            : "nothing could be measured";

    /// <summary>What was left open, in words.</summary>
    internal static string Questions(ChannelResult channel) =>
        string.Join(", ", channel.NotAssessed.Select(question => ReasonLetters.NameOf(question.Reason)).Distinct(StringComparer.Ordinal));

    private static string ShareOfTrials(ChannelResult channel, Finding finding)
    {
        string share = Value(finding, "bad_share") is { } evidence ? $"{WithUnit(evidence.Value, evidence.Unit)} of the trials are bad" : "many trials are bad";
        string? commonest = channel.Cells
            .Where(cell => cell.Verdict == Grade.Reject && !cell.Reasons.IsEmpty)
            .GroupBy(cell => cell.Reasons[0], StringComparer.Ordinal)
            .OrderByDescending(group => group.Count())
            .ThenBy(group => ReasonLetters.Rank(group.Key))
            .FirstOrDefault()?.Key;
        return commonest is null ? share : $"{share}, mostly {ReasonLetters.NameOf(commonest)}";
    }

    private static string NarrowPeak(ChannelResult channel, Finding finding)
    {
        double? hz = Value(finding, "narrow_hz")?.Value
            ?? channel.Measures.FirstOrDefault(measure => string.Equals(measure.Value.Measure, "narrow_hz", StringComparison.Ordinal)).Value.Value;
        return hz is { } known ? $"narrow peak at {Short(known)} Hz" : "narrow peak";
    }

    private static string JoinedWith(ChannelResult channel, Finding finding)
    {
        string[] others = [.. finding.Channels.Where(name => !string.Equals(name, channel.Name, StringComparison.Ordinal)).Select(PlainText.Of)];
        return others.Length == 0 ? "joined with another site" : $"joined with {string.Join(" and ", others)}";
    }

    private static string Drift(Finding finding) => Value(finding, "headroom") is { } headroom
        ? $"drift, {WithUnit(headroom.Value, headroom.Unit)} headroom left"
        : WithNumber("drift", finding, "drift_slope", "drift_range", "level_trend");

    private static string WithNumber(string words, Finding finding, params ReadOnlySpan<string> measures)
    {
        foreach (string measure in measures)
        {
            if (Value(finding, measure) is { } evidence)
            {
                return $"{words}, {WithUnit(evidence.Value, evidence.Unit)}";
            }
        }

        return words;
    }

    private static Evidence? Value(Finding finding, string measure) =>
        finding.Evidence.FirstOrDefault(evidence => string.Equals(evidence.Measure, measure, StringComparison.Ordinal));
}
