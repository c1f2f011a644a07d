using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Fairness;
using ChannelAudit.Reports.Silence;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Pages;

/// <summary><c>report.html</c>: one page without scripts that opens from disk and prints, worst first.</summary>
public static class ReportPage
{
    /// <summary>The page of one recording, as UTF-8 bytes.</summary>
    /// <param name="run">With what it was audited.</param>
    /// <param name="recording">The result.</param>
    /// <param name="figures">Its pictures.</param>
    /// <param name="pilot">What a pilot shows first; null for none.</param>
    /// <param name="decisions">The decisions of a run over this recording alone; null for none.</param>
    /// <param name="fairness">Whether exclusions are even, of a run over this recording only; null among others, where it stands on the page over all.</param>
    /// <param name="sensitivity">How many verdicts hang on the limits; null where the page over all recordings says it.</param>
    /// <param name="silence">What silence means in it; none when nobody asked.</param>
    public static byte[] OfRecording(
        AuditRun run,
        RecordingResult recording,
        ReportFigures figures,
        PilotSection? pilot = null,
        DecisionsDigest? decisions = null,
        FairnessReport? fairness = null,
        SensitivitySection? sensitivity = null,
        ImmutableArray<KeptStudy> silence = default)
    {
        RunDigest digest = RunDigest.Of(recording) with { Decisions = decisions };
        return Page(RunSummary.Of(digest), html =>
        {
            pilot?.Write(html);
            RecordingSection.Write(html, recording, figures);
            DecisionSection.WriteElsewhere(html, digest);
            WriteFairness(html, fairness);
            AlsoNoticedSection.Write(html, run, []);
            AdviceSection.Write(html, digest.Codes);
            sensitivity?.Write(html);
            SilenceSection.Write(html, silence.IsDefault ? [] : silence);
            RepeatSection.Write(html, run);
        });
    }

    /// <summary>The page over several recordings, as UTF-8 bytes; each has a page of its own.</summary>
    /// <param name="run">With what they were audited.</param>
    /// <param name="digest">The recordings.</param>
    /// <param name="sensitivity">How many verdicts hang on the limits; null when it was not counted.</param>
    /// <param name="silence">What silence means in recordings whose owner asked.</param>
    public static byte[] OfStudy(AuditRun run, RunDigest digest, SensitivitySection? sensitivity = null, ImmutableArray<KeptStudy> silence = default) => Page(RunSummary.Of(digest), html =>
    {
        ImmutableArray<RecordingDigest> worstFirst = RecordingDigest.WorstFirst(digest.Recordings);
        WriteWay(html, run, digest, sensitivity is not null, !silence.IsDefaultOrEmpty);
        StandsOut.Write(html, digest, worstFirst);
        DecisionSection.WriteStudy(html, digest);
        WriteFairness(html, digest.Fairness);
        StudySection.Write(html, digest.Odd);
        new OverviewTable(worstFirst).Write(html);
        UnreadSection.Write(html, digest.Unread);
        AlsoNoticedSection.Write(html, run, worstFirst);
        AdviceSection.Write(html, digest.Codes);
        sensitivity?.Write(html);
        SilenceSection.Write(html, silence.IsDefault ? [] : silence);
        RepeatSection.Write(html, run);
    });

    private static void WriteFairness(HtmlText html, FairnessReport? fairness)
    {
        if (fairness is not null)
        {
            FairnessSection.Write(html, fairness);
        }
    }

    private static void WriteWay(HtmlText html, AuditRun run, RunDigest digest, bool hasSensitivity, bool hasSilence)
    {
        html.Line("<nav aria-label=\"On this page\"><ul>");

        // In the order of the page.
        foreach ((bool isThere, string anchor, string title) in new[]
        {
            (true, "stands-out", "What stands out"),
            (DecisionWords.Count(digest.Decisions) is not null, "decisions", "Decisions of persons"),
            (digest.Fairness is not null, "even", FairnessWords.Title),
            (!digest.Odd.IsEmpty, "odd", StudyWords.Title),
            (true, "recordings", "All recordings"),
            (!digest.Unread.IsEmpty, "unread", "Could not be read"),
            (AlsoNoticedSection.IsNeeded(run, digest.Recordings), AlsoNoticedSection.Anchor, AlsoNoticedSection.Title),
            (AdviceSection.IsNeeded(digest.Codes), AdviceSection.Anchor, AdviceSection.ShortTitle),
            (hasSensitivity, "limits-moved", SensitivityWords.Title),
            (hasSilence, SilenceSection.Anchor, SilenceWords.Title),
            (true, "again", "How to make this again"),
        })
        {
            if (isThere)
            {
                html.Line($"<li><a href=\"#{anchor}\">{title}</a></li>");
            }
        }

        html.Line("</ul></nav>");
    }

    private static byte[] Page(string summary, Action<HtmlText> content)
    {
        HtmlText html = new();
        html.Line("<!DOCTYPE html>").Line("<html lang=\"en\">").Line("<head>").Line("<meta charset=\"utf-8\">")
            .Line("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")
            .Line("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data: file: 'self'\">")
            .ElementLine("title", $"Signal audit: {summary}")
            .Line("<style>").Line(ReportStyle.Css).Line("</style>").Line("</head>").Line("<body>")
            .ElementLine("a class=\"skip\" href=\"#verdicts\"", "To the verdicts").Line("<header>").ElementLine("h1", "Which channels and trials can be scored?")
            .ElementLine("p class=\"lead\"", summary).Line("</header>").Line("<main id=\"verdicts\" tabindex=\"-1\">");
        content(html);
        html.Line("</main>").Line("</body>").Line("</html>");
        return Encoding.UTF8.GetBytes(html.ToString());
    }
}
