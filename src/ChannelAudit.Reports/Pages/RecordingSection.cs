using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Pages;

/// <summary>One recording on the page.</summary>
internal static class RecordingSection
{
    /// <summary>Where what was also noticed stands.</summary>
    public const string NotesAnchor = "noticed";

    /// <summary>Writes the section.</summary>
    /// <param name="html">The page.</param>
    /// <param name="recording">The recording.</param>
    /// <param name="figures">The pictures.</param>
    public static void Write(HtmlText html, RecordingResult recording, ReportFigures figures)
    {
        html.Markup("<section id=\"recording\" aria-labelledby=\"name\"><h2 id=\"name\">").Label(recording.Id).Line("</h2>");
        WriteWay(html, recording, figures);
        WriteFacts(html, recording);
        WriteRibbon(html, recording, figures);
        ImmutableArray<ChannelResult> channels = WorstFirst.Channels(recording);
        ChannelTable.Write(html, recording, channels);
        DecisionSection.Write(html, recording);
        TrialByTrial.Write(html, recording, channels);
        ImpedanceSection.Write(html, recording.Impedance);
        WriteSheets(html, recording, channels, figures);
        GapTable.Write(html, recording, channels);
        ConditionTable.Write(html, recording);
        WriteNotes(html, recording);
        WriteFiles(html, recording, figures);
        html.Line("</section>");
    }

    private static void WriteWay(HtmlText html, RecordingResult recording, ReportFigures figures)
    {
        html.Line("<nav aria-label=\"On this page\"><ul>");
        if (figures.IsAmongOthers)
        {
            html.Line("<li><a href=\"../../report.html\">All recordings</a></li>");
        }

        html.Markup("<li><a href=\"#channels\">Channels</a></li>")
            .Markup(recording.Decisions is null ? string.Empty : "<li><a href=\"#decisions\">Decisions</a></li>").Line("<li><a href=\"#trials\">Trial by trial</a></li><li><a href=\"#conditions\">Usable trials</a></li>"
            + "<li><a href=\"#again\">How to make this again</a></li>").Line("</ul></nav>");
    }

    private static void WriteFacts(HtmlText html, RecordingResult recording)
    {
        html.Markup("<p class=\"facts\">").Label(recording.Path).Text(
            $" \u00B7 {recording.Format} \u00B7 {Quantities.Clock(recording.DurationS)} long \u00B7 "
            + $"{Quantities.Many(recording.Trials.Length, "trial")} from {recording.TrialsFrom} \u00B7 "
            + string.Create(CultureInfo.InvariantCulture, $"mains {recording.Mains.Hz:0.##} Hz ({recording.Mains.Origin})")
            + (recording.Scoring is { } scoring ? $" \u00B7 judged behind the scoring filter: {scoring}" : string.Empty))
            .Line("</p>");
    }

    private static void WriteRibbon(HtmlText html, RecordingResult recording, ReportFigures figures)
    {
        if (figures.Source(FigureFile.SessionRibbon) is { } source)
        {
            string verdicts = string.Join("; ", recording.Channels.Select(channel => $"{channel.Name}: {VerdictWords.Code(channel.Verdict)}"));
            WritePicture(html, figures, FigureFile.SessionRibbon, source, $"Trials of {recording.Id} over time, one ribbon a site. {verdicts}. The tables below say the same in words.");
            if (recording.Decisions is not null)
            {
                html.Line("<p class=\"note\">The picture shows computed verdicts, before <a href=\"#decisions\">decisions</a> of persons.</p>");
            }
        }
    }

    // Folded away: the ribbon and the tables come first, and a sheet is for who asks about one channel.
    private static void WriteSheets(HtmlText html, RecordingResult recording, ImmutableArray<ChannelResult> channels, ReportFigures figures)
    {
        bool any = false;
        foreach (ChannelResult channel in channels)
        {
            string words = FigureText.Of(recording, channel);
            any |= WriteSheet(
                html,
                recording,
                figures,
                FigureFile.SheetOf(recording, channel),
                ("Sheet of ", channel.Name, $": {words}"),
                $"Trace, worst trial, spectrum, baseline and amplitude by trial of {channel.Name}. {words}.");
        }

        foreach (PairResult pair in recording.Pairs)
        {
            any |= WriteSheet(
                html,
                recording,
                figures,
                FigureFile.SheetOf(recording, pair),
                ("Pair ", $"{pair.ChannelA}, {pair.ChannelB}", $": {pair.Evidence.Decision}"),
                $"Correlation over time, one moment, coherence and expected patterns of {pair.ChannelA} and {pair.ChannelB}. {pair.Evidence.Why}");
        }

        if (!any && !channels.IsEmpty)
        {
            html.ElementLine("p class=\"note\"", "Sheets of its channels: screen this recording alone, or all with --figures all.");
        }
    }

    private static bool WriteSheet(
        HtmlText html, RecordingResult recording, ReportFigures figures, string file, (string Kind, string Name, string Words) summary, string description)
    {
        if (figures.Source(file) is not { } source)
        {
            return false;
        }

        html.Markup("<details><summary>").Text(summary.Kind).Label(summary.Name).Text(summary.Words).Line("</summary>");
        WritePicture(html, figures, file, source, description);
        html.Line("</details>");
        return true;
    }

    // A link to the file: on a narrow screen the picture is shrunk, and its letters with it.
    private static void WritePicture(HtmlText html, ReportFigures figures, string file, string source, string description) => html.Line(
        $"<a href=\"{HtmlText.Attribute(figures.Link(file))}\"><img src=\"{HtmlText.Attribute(source)}\" alt=\"{HtmlText.Attribute(description)}\"></a>");

    private static void WriteNotes(HtmlText html, RecordingResult recording)
    {
        if (recording.Information.IsEmpty && recording.Warnings.IsEmpty && recording.Skipped.IsEmpty)
        {
            return;
        }

        html.ElementLine($"h3 id=\"{NotesAnchor}\"", $"{AlsoNoticedSection.Title}; changes no verdict").Line("<ul>");
        foreach (Finding information in recording.Information)
        {
            html.Markup("<li>").Element("bdi", string.Join(", ", information.Channels))
                .Text($", {Quantities.Stretch(information.FromS, information.ToS)}: {information.Text}; likely cause: {information.Cause}").Line("</li>");
        }

        foreach (SkippedChannel skipped in recording.Skipped)
        {
            html.Markup("<li>").Label(skipped.Label).Text($" was not audited: {skipped.Cause}").Line("</li>");
        }

        foreach (Warning warning in recording.Warnings)
        {
            html.Markup("<li>").Label(warning.File).Text($", {warning.Place}: {warning.Message}").Line("</li>");
        }

        html.Line("</ul>");
    }

    private static void WriteFiles(HtmlText html, RecordingResult recording, ReportFigures figures)
    {
        html.Markup("<p class=\"note\">Every number: ");
        string[] files = ["measures.tsv", "pairs.tsv", RecordingContent.ResultName, .. figures.Names];
        for (int file = 0; file < files.Length; file++)
        {
            html.Markup(file > 0 ? ", " : string.Empty)
                .Markup($"<a href=\"{HtmlText.Attribute(figures.Link(files[file]))}\">").Text(files[file]).Markup("</a>");
        }

        html.Markup("<br>SHA-256 of the recording: ").Element("code", recording.Sha256).Line("</p>");
    }
}
