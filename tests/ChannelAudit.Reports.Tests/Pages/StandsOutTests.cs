using System.Text;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Pages;

public sealed class StandsOutTests
{
    [Fact]
    public void WhatNoVerdictShowsComesFirstWithLinks()
    {
        RunDigest digest = SampleResults.Run().Digest with { Odd = SampleStudy.Odd };
        HtmlText html = new();
        StandsOut.Write(html, digest, RecordingDigest.WorstFirst(digest.Recordings));
        string page = html.ToString();

        Assert.Contains(
            "<li>same signal: <a href=\"recordings/p02/report.html\"><bdi>p02</bdi></a>, <a href=\"recordings/p09/report.html\"><bdi>p09</bdi></a>: both hold the same signal: cheek",
            page,
            StringComparison.Ordinal);
        Assert.Contains("<li>gain: ", page, StringComparison.Ordinal);
        Assert.DoesNotContain("sampling rate", page, StringComparison.Ordinal);
        Assert.InRange(page.IndexOf("same signal", StringComparison.Ordinal), 0, page.IndexOf("Worst first", StringComparison.Ordinal));
    }

    [Fact]
    public void ARecordingThatWasCutShortIsNoPlainPass()
    {
        RecordingResult cut = SampleResults.Clean("cut") with
        {
            Warnings = [new Warning("cut.edf", "header", "number of records is stated as '522'; the file holds 245"), new Warning("cut.edf", "record 246", "left out")],
        };

        string page = Page(cut, SampleResults.Clean("whole"));

        Assert.Contains("<a href=\"#also-noticed\">also: 2 warnings</a>", page, StringComparison.Ordinal);
        Assert.Contains("<h2 id=\"also-noticed\">Also noticed</h2>", page, StringComparison.Ordinal);
        Assert.Contains(
            "<a href=\"recordings/cut/report.html#noticed\"><bdi>cut</bdi></a></th><td class=\"number\">2</td><td>header: number of records is stated as &#x27;522&#x27;; the file holds 245; and 1 more</td>",
            page,
            StringComparison.Ordinal);
        Assert.DoesNotContain("also-noticed", Page(SampleResults.Clean("a"), SampleResults.Clean("b")), StringComparison.Ordinal);
    }

    [Fact]
    public void EventsThatLookOddAreNoticedToo()
    {
        RecordingResult odd = SampleResults.Clean("odd") with
        {
            Information = [SampleResults.Finding(ReasonCode.Events, Grade.Pass, ["cheek"], null, 0, 9, [], "2 trials are missing", "the program stopped")],
        };

        Assert.Contains("also: events that look odd", Page(odd, SampleResults.Clean("whole")), StringComparison.Ordinal);
    }

    [Fact]
    public void ReasonsAreSaidWithWhatTheyRestOn()
    {
        RecordingResult clean = SampleResults.Clean("rectified");
        RecordingResult rectified = clean with
        {
            Channels =
            [
                clean.Channels[0] with
                {
                    Verdict = Grade.Questionable,
                    Reasons = [ReasonCode.UnusableInput],
                    Findings = [SampleResults.Finding(ReasonCode.UnusableInput, Grade.Questionable, ["cheek"], null, 0, 60, [], "the signal is rectified", "the recorder")],
                },
                clean.Channels[1],
            ],
        };
        RecordingResult suspected = clean with
        {
            Id = "suspected",
            Channels = [.. clean.Channels.Select(channel => channel with
            {
                Verdict = Grade.Questionable,
                Reasons = [ReasonCode.Bridge],
                Findings = [SampleResults.Finding(ReasonCode.Bridge, Grade.Questionable, ["cheek", "brow"], null, 0, 60, [], "cheek and brow share signal", "gel")],
            })],
        };

        string page = Page(rectified, suspected);

        Assert.Contains("<td>input that cannot be judged (rectified)</td>", page, StringComparison.Ordinal);
        Assert.Contains("<td>joined sites (suspected)</td>", page, StringComparison.Ordinal);
    }

    private static string Page(params RecordingResult[] recordings)
    {
        SampleRun run = SampleResults.Run(recordings);
        return Encoding.UTF8.GetString(ReportPage.OfStudy(run.Audit, run.Digest));
    }
}
