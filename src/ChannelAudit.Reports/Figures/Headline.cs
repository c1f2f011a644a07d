using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures;

/// <summary>What a person in a hurry must know about a recording.</summary>
/// <param name="Look">The worst look.</param>
/// <param name="Text">The most important finding, in words.</param>
/// <param name="Cause">Its likely cause, or what was not assessed; may be empty.</param>
/// <param name="Reason">The reason code that the text names; null when it names none.</param>
/// <param name="Named">The finding that the text names, whose cause and advice may stand below; null when it names none.</param>
internal sealed record Headline(VerdictLook Look, string Text, string Cause, string? Reason = null, Finding? Named = null)
{
    /// <summary>Reads it from a result.</summary>
    public static Headline Of(RecordingResult recording)
    {
        if (recording.Channels.IsEmpty)
        {
            return new(VerdictLook.NotAssessed, "Not assessed: no channel could be audited", SkippedWords(recording));
        }

        ChannelResult worst = Worst(recording);
        return VerdictLooks.Of(worst) switch
        {
            VerdictLook.Pass => OfPass(recording),
            VerdictLook.NotAssessed => new(
                VerdictLook.NotAssessed, $"{Name(worst)} is not assessed: {FigureText.WhyNot(worst)}", string.Empty, worst.Reasons.FirstOrDefault()),
            var look => OfFault(recording, worst, look, Alike(recording, worst, look)),
        };
    }

    /// <summary>Reads it from one channel of a result.</summary>
    public static Headline Of(RecordingResult recording, ChannelResult channel) => VerdictLooks.Of(channel) switch
    {
        VerdictLook.Pass => OfPass(recording, channel),
        VerdictLook.NotAssessed => new(VerdictLook.NotAssessed, $"{Name(channel)} is not assessed: {FigureText.WhyNot(channel)}", string.Empty),
        var look => OfFault(recording, channel, look, []),
    };

    /// <summary>The channel to name first: by look, then share of rejected trials, then reason, then its number, then file order.</summary>
    public static ChannelResult Worst(RecordingResult recording) => recording.Channels
        .OrderByDescending(VerdictLooks.Of)
        .ThenByDescending(channel => channel.Cells.IsEmpty ? 0 : (double)channel.Count(Grade.Reject) / channel.Cells.Length)
        .ThenBy(channel => channel.Reasons.IsEmpty ? int.MaxValue : ReasonLetters.Rank(channel.Reasons[0]))
        .ThenByDescending(channel => FigureText.WorstFinding(channel) is { } finding ? ReasonPhrase.Excess(finding) : 0)
        .First();

    private static ChannelResult[] Alike(RecordingResult recording, ChannelResult worst, VerdictLook look) =>
        FigureText.WorstFinding(worst) is not { } finding ? [] : [.. recording.Channels.Where(channel =>
            channel != worst && VerdictLooks.Of(channel) == look && IsSame(FigureText.WorstFinding(channel), finding))];

    private static Headline OfFault(RecordingResult recording, ChannelResult worst, VerdictLook look, ChannelResult[] alike)
    {
        Finding? finding = FigureText.WorstFinding(worst);
        string when = finding is not null && StretchOf(worst, finding) is { } stretch
            ? FigureText.When(stretch.FromS, stretch.ToS, recording.DurationS, ScatteredFault.Is(recording, worst, stretch))
            : string.Empty;
        string reason = alike.Length > 0 && string.Equals(finding!.Reason, ReasonCode.Bridge, StringComparison.Ordinal)
            ? PlainText.Of(ReasonWords.Name(finding.Reason, finding.Grade))
            : FigureText.Reason(recording, worst);
        string verdict = look == VerdictLook.Reject ? "rejected" : VerdictLooks.Word(look);
        string text = $"{Names(worst, alike)} {verdict}{(reason.Length == 0 ? string.Empty : ": ")}{reason}{(when.Length == 0 ? string.Empty : ", ")}{when}";
        return new(look, text, finding is null ? string.Empty : PlainText.Of(finding.Cause), finding?.Reason ?? worst.Reasons.FirstOrDefault(), finding);
    }

    // What single trials show may be known to hold over a stretch.
    private static Finding? StretchOf(ChannelResult channel, Finding finding) => FigureText.IsShareOfTrials(finding) ? null
        : finding.Trial is null ? finding
        : channel.Findings.FirstOrDefault(one => one.Trial is null && string.Equals(one.Reason, finding.Reason, StringComparison.Ordinal) && !FigureText.IsShareOfTrials(one));

    private static bool IsSame(Finding? one, Finding other) =>
        one is not null && string.Equals(one.Reason, other.Reason, StringComparison.Ordinal) && FigureText.IsShareOfTrials(one) == FigureText.IsShareOfTrials(other);

    private static string Names(ChannelResult worst, ChannelResult[] alike) => alike.Length switch
    {
        0 => $"{Name(worst)} is",
        1 => $"{Name(worst)} and {Name(alike[0])} are",
        _ => $"{Name(worst)} and {alike.Length.Plain()} others are",
    };

    private static Headline OfPass(RecordingResult recording)
    {
        string text = recording.Channels.Length == 1 ? "The channel passes" : $"All {recording.Channels.Length.Plain()} channels pass";
        string cause = OpenOf(recording.Channels);
        ChannelResult? bad = recording.Channels.Where(channel => channel.Cells.Any(cell => cell.Verdict > Grade.Pass)).MaxBy(BadTrials);
        if (bad is null)
        {
            return new(VerdictLook.Pass, recording.Trials.IsEmpty ? text : $"{text}, and so do their trials", cause);
        }

        (string words, string? reason, Finding? named) = TrialWords(recording, bad);
        return new(VerdictLook.Pass, $"{text}; {Name(bad)} has {words}", cause, reason, named);
    }

    private static Headline OfPass(RecordingResult recording, ChannelResult channel)
    {
        string text = $"{Name(channel)} passes";
        string cause = OpenOf([channel]);
        if (channel.Cells.All(cell => cell.Verdict == Grade.Pass))
        {
            return new(VerdictLook.Pass, channel.Cells.IsEmpty ? text : $"{text}, and so do its trials", cause);
        }

        (string words, string? reason, Finding? named) = TrialWords(recording, channel);
        return new(VerdictLook.Pass, $"{text}, with {words}", cause, reason, named);
    }

    private static string OpenOf(ImmutableArray<ChannelResult> channels)
    {
        string open = FigureText.Names(channels.SelectMany(channel => channel.NotAssessed).Select(question => question.Reason));
        return open.Length == 0 ? string.Empty : $"Not assessed: {open}";
    }

    private static (string Words, string? Reason, Finding? Named) TrialWords(RecordingResult recording, ChannelResult channel)
    {
        Grade grade = channel.Cells.Max(cell => cell.Verdict);
        string word = grade == Grade.Reject ? "rejected" : "questionable";
        CellResult[] cells = [.. channel.Cells.Where(cell => cell.Verdict == grade)];
        Finding? worst = ReasonPhrase.Worst(cells.SelectMany(cell => cell.Findings).Where(finding => finding.Grade == grade));
        string what = worst is null ? FigureText.Names(cells[0].Reasons) : FigureText.Of(recording, channel, worst);
        return ($"{Quantities.Many(cells.Length, "trial")} {word}: {what}", worst?.Reason ?? cells[0].Reasons.FirstOrDefault(), worst);
    }

    private static long BadTrials(ChannelResult channel) => (1_000_000L * channel.Count(Grade.Reject)) + channel.Count(Grade.Questionable);

    // A title must have room for the finding, however long the label.
    private static string Name(ChannelResult channel)
    {
        const int longest = 40;
        string name = PlainText.Of(channel.Name);
        return name.Length <= longest ? name : name[..(char.IsHighSurrogate(name[longest - 2]) ? longest - 2 : longest - 1)].TrimEnd() + "\u2026";
    }

    private static string SkippedWords(RecordingResult recording) =>
        string.Join("; ", recording.Skipped.Select(skipped => $"{PlainText.Of(skipped.Label)}: {PlainText.Of(skipped.Cause)}"));
}
