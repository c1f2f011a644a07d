using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;
using static ChannelAudit.Reports.Figures.FigureNumbers;

namespace ChannelAudit.Reports.Figures;

/// <summary>What a person in a hurry must know about a recording.</summary>
/// <param name="Look">The worst look.</param>
/// <param name="Text">The most important finding, in words.</param>
/// <param name="Cause">Its likely cause, or what else matters; may be empty.</param>
internal sealed record Headline(VerdictLook Look, string Text, string Cause)
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
            VerdictLook.NotAssessed => new(VerdictLook.NotAssessed, $"{Name(worst)} is not assessed: {FigureText.WhyNot(worst)}", string.Empty),
            var look => OfFault(recording, worst, look),
        };
    }

    /// <summary>The channel to name first: by look, then share of rejected trials, then reason, then file order.</summary>
    public static ChannelResult Worst(RecordingResult recording) => recording.Channels
        .OrderByDescending(VerdictLooks.Of)
        .ThenByDescending(channel => channel.Cells.IsEmpty ? 0 : (double)channel.Count(Grade.Reject) / channel.Cells.Length)
        .ThenBy(channel => channel.Reasons.IsEmpty ? int.MaxValue : ReasonLetters.Rank(channel.Reasons[0]))
        .First();

    private static Headline OfFault(RecordingResult recording, ChannelResult worst, VerdictLook look)
    {
        Finding? finding = FigureText.WorstFinding(worst);
        string when = finding is { Trial: null } && !FigureText.IsShareOfTrials(finding) ? $", {FigureText.When(finding.FromS, finding.ToS, recording.DurationS)}" : string.Empty;
        string reason = FigureText.Reason(recording, worst);
        string verdict = look == VerdictLook.Reject ? "rejected" : VerdictLooks.Word(look);
        string text = $"{Name(worst)} is {verdict}{(reason.Length == 0 ? string.Empty : ": ")}{reason}{when}";
        return new(look, text, finding is null ? string.Empty : PlainText.Of(finding.Cause));
    }

    private static Headline OfPass(RecordingResult recording)
    {
        string text = recording.Channels.Length == 1 ? "The channel passes" : $"All {Whole(recording.Channels.Length)} channels pass";
        ChannelResult? bad = recording.Channels.Where(channel => channel.Cells.Any(cell => cell.Verdict > Grade.Pass)).MaxBy(BadTrials);
        if (bad is not null)
        {
            Grade grade = bad.Cells.Max(cell => cell.Verdict);
            int count = bad.Count(grade);
            string word = grade == Grade.Reject ? "rejected" : "questionable";
            return new(VerdictLook.Pass, $"{text}; {Name(bad)} has {Count(count, "trial")} {word}: {TrialReason(recording, bad, grade)}", string.Empty);
        }

        string[] open = [.. recording.Channels.SelectMany(channel => channel.NotAssessed).Select(question => ReasonLetters.NameOf(question.Reason)).Distinct(StringComparer.Ordinal)];
        return new(VerdictLook.Pass, recording.Trials.IsEmpty ? text : $"{text}, and so do their trials", open.Length == 0 ? string.Empty : $"Not assessed: {string.Join(", ", open)}");
    }

    // A title must have room for the finding, however long the label.
    private static string Name(ChannelResult channel)
    {
        const int longest = 40;
        string name = PlainText.Of(channel.Name);
        return name.Length <= longest ? name : name[..(char.IsHighSurrogate(name[longest - 2]) ? longest - 2 : longest - 1)].TrimEnd() + "\u2026";
    }

    private static long BadTrials(ChannelResult channel) => (1_000_000L * channel.Count(Grade.Reject)) + channel.Count(Grade.Questionable);

    private static string TrialReason(RecordingResult recording, ChannelResult channel, Grade grade)
    {
        CellResult first = channel.Cells.First(cell => cell.Verdict == grade);
        return first.Findings.FirstOrDefault(finding => finding.Grade == grade) is { } finding
            ? FigureText.Of(recording, channel, finding)
            : string.Join(", ", first.Reasons.Select(ReasonLetters.NameOf));
    }

    private static string SkippedWords(RecordingResult recording) => recording.Skipped.IsEmpty
        ? string.Empty
        : string.Join("; ", recording.Skipped.Select(skipped => $"{PlainText.Of(skipped.Label)}: {PlainText.Of(skipped.Cause)}"));
}
