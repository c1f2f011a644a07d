using ChannelAudit.Decisions;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Pages;

/// <summary>What persons decided: every decision about a recording with what has become of it, and over a study how many there are.</summary>
internal static class DecisionSection
{
    /// <summary>The place of a decision on the page of its recording.</summary>
    public static string Anchor(Decision decision) => $"decision-{decision.Number.Plain()}";

    /// <summary>Writes the decisions about a recording; nothing when there are none.</summary>
    public static void Write(HtmlText html, RecordingResult recording)
    {
        if (recording.Decisions is not { } decisions)
        {
            return;
        }

        html.ElementLine("h3 id=\"decisions\"", "Decisions of persons").Table(
            "decisions",
            "As they stand in decisions.jsonl. A decision on a trial of a channel comes before one on the trial, and that before one on the channel; the computed verdict stays beside it. "
            + "Pictures show computed verdicts",
            "No.", "About", "Decided", "Computed then", "What became of it", "Who and when", "Why");
        foreach (StatedDecision one in decisions.All)
        {
            Decision decision = one.Decision;
            html.Markup($"<tr id=\"{Anchor(decision)}\">").Element("th scope=\"row\"", decision.Number.Plain())
                .Markup("<td>").Label(decision.Subject).Markup("</td>")
                .VerdictCell(decision.Verdict ?? Grade.Questionable)
                .Markup("<td>").Label(DecisionWords.ComputedThen(decision)).Markup(decision.Blind ? "<br>hidden from the person</td>" : "</td>")
                .Markup("<td>").Element(one.IsFlagged ? "strong" : "span", DecisionWords.State(one)).Markup("</td>")
                .Markup("<td>").Label(decision.By).Text($", {DecisionWords.Time(decision)}").Markup("</td>")
                .Markup("<td>").Label(decision.Reason).Markup("</td>").Line("</tr>");
        }

        html.EndTable();
    }

    /// <summary>Writes who decided about a channel or trial, when and why, with the computed verdict; nothing without a decision.</summary>
    public static void WriteLine(HtmlText html, StatedDecision? decision, Grade computed)
    {
        if (decision is { Decision: { } known })
        {
            html.Markup("<p class=\"note\">Decided by ").Label(known.By).Text($" on {DecisionWords.Day(known)}: ").Label(known.Reason)
                .Markup(". Computed: ").Verdict(computed).Line($". <a href=\"#{Anchor(known)}\">Decision {known.Number.Plain()}</a></p>");
        }
    }

    /// <summary>Writes how many decisions a study has, where they are, and which need another look; nothing when there are none.</summary>
    public static void WriteStudy(HtmlText html, RunDigest digest)
    {
        if (DecisionWords.Count(digest.Decisions) is not { } count)
        {
            return;
        }

        html.Line("<section>").ElementLine("h2 id=\"decisions\"", "Decisions of persons").ElementLine("p", $"{count} By rule alone, trials: {RunSummary.InWords(digest.ComputedTrials)}.");
        RecordingDigest[] decided = [.. digest.Recordings.Where(recording => recording.IsDecided)];
        for (int one = 0; one < decided.Length; one++)
        {
            html.Markup(one == 0 ? "<p>In force in: " : ", ").StudyLink(decided[one].Id, "decisions").Label(decided[one].Id).Markup("</a>");
        }

        html.Line(decided.Length > 0 ? "</p>" : string.Empty);
        Warning[] odd = [.. digest.Warnings.Select(entry => entry.Warning).Where(warning => string.Equals(warning.File, Ledger.FileName, StringComparison.Ordinal)), .. Elsewhere(digest)];
        WriteWarnings(html, odd);
        html.Line("</section>");
    }

    /// <summary>Writes the decisions that are about recordings of no audit; nothing when there are none.</summary>
    public static void WriteElsewhere(HtmlText html, RunDigest digest) => WriteWarnings(html, [.. Elsewhere(digest)]);

    // A line that was broken off is no state of the audit: it is told on the terminal.
    private static IEnumerable<Warning> Elsewhere(RunDigest digest) => digest.Decisions is { } decisions ? (decisions with { Torn = null }).Warnings : [];

    private static void WriteWarnings(HtmlText html, Warning[] warnings)
    {
        if (warnings.Length == 0)
        {
            return;
        }

        html.Line("<ul>");
        foreach (Warning warning in warnings)
        {
            html.Markup("<li>").Text($"{warning.File}, {warning.Place}: {warning.Message}").Line("</li>");
        }

        html.Line("</ul>");
    }
}
