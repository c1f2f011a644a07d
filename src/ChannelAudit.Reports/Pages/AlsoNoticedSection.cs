using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Pages;

/// <summary>What was odd about files, setup and events: it changes no verdict, and a recording that was cut short passes like any other.</summary>
internal static class AlsoNoticedSection
{
    /// <summary>What stands above it; the terminal names it so.</summary>
    public const string Title = "Also noticed";

    /// <summary>Its place on the page.</summary>
    public const string Anchor = "also-noticed";

    private const int MostUnfolded = 20;

    /// <summary>Whether there is anything to say.</summary>
    public static bool IsNeeded(AuditRun run, ImmutableArray<RecordingDigest> recordings) => !run.Warnings.IsEmpty || recordings.Any(IsOdd);

    /// <summary>Writes the section; nothing when there is nothing to say.</summary>
    /// <param name="html">The page.</param>
    /// <param name="run">Its warnings belong to no recording.</param>
    /// <param name="recordings">In the order in which they are listed; none on the page of one, which says it itself.</param>
    public static void Write(HtmlText html, AuditRun run, ImmutableArray<RecordingDigest> recordings)
    {
        if (!IsNeeded(run, recordings))
        {
            return;
        }

        html.Line("<section>").ElementLine($"h2 id=\"{Anchor}\"", Title);
        if (!run.Warnings.IsEmpty)
        {
            html.Line("<ul>");
            foreach (Warning warning in run.Warnings)
            {
                html.Markup("<li>").Label(warning.File).Text($", {warning.Place}: {warning.Message}").Line("</li>");
            }

            html.Line("</ul>");
        }

        WriteRecordings(html, [.. recordings.Where(IsOdd)]);
        html.Line("</section>");
    }

    private static bool IsOdd(RecordingDigest recording) => RecordingReasons.Also(recording) is not null;

    private static void WriteRecordings(HtmlText html, RecordingDigest[] odd)
    {
        if (odd.Length == 0)
        {
            return;
        }

        bool isFolded = odd.Length > MostUnfolded;
        html.Markup(isFolded ? "<details>" : string.Empty);
        if (isFolded)
        {
            html.ElementLine("summary", $"Show all {odd.Length.Plain()} recordings");
        }

        html.Table("noticed", "Recordings with warnings, or with events that look odd; changes no verdict, but may change what can be done with them", "Recording", "Warnings", "What");
        foreach (RecordingDigest recording in odd)
        {
            html.Markup("<tr><th scope=\"row\">").StudyLink(recording.Id, HasNotes(recording) ? RecordingSection.NotesAnchor : null).Label(recording.Id).Markup("</a></th>")
                .Element("td class=\"number\"", recording.Warnings.Length.Plain()).Element("td", Words(recording)).Line("</tr>");
        }

        html.EndTable().Line(isFolded ? "</details>" : string.Empty);
    }

    // Warnings about decisions stand elsewhere on its page.
    private static bool HasNotes(RecordingDigest recording) =>
        recording.Warnings.Length > (recording.Decisions?.Warnings.Length ?? 0) || RecordingReasons.HasOddEvents(recording);

    private static string Words(RecordingDigest recording)
    {
        string first = recording.Warnings.IsEmpty ? string.Empty : $"{recording.Warnings[0].Place}: {recording.Warnings[0].Message}";
        string more = recording.Warnings.Length > 1 ? $"; and {(recording.Warnings.Length - 1).Plain()} more" : string.Empty;
        string events = RecordingReasons.HasOddEvents(recording) ? ReasonWords.For(ReasonCode.Events).Name : string.Empty;
        return first + more + (first.Length > 0 && events.Length > 0 ? "; " : string.Empty) + events;
    }
}
