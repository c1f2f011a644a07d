using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using ChannelAudit.Findings;
using ChannelAudit.Measures;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Pages;

public sealed partial class ReportPageTests
{
    private static readonly byte[] Png = [0x89, 0x50, 0x4E, 0x47];

    [Fact]
    public void ThePageIsAsAgreed() => Golden.Match("report.html", SampleResults.Run().Report());

    [Fact]
    public void ThePageOfARecordingIsAsAgreed() => Golden.Match("recording.html", SampleResults.Run().PageOf("day1+p07", Png));

    [Fact]
    public void LinksAtTheTopStandInTheOrderOfThePageAndLeaveOutNoPart()
    {
        XDocument page = Parsed(SampleResults.Run().Report());
        string[] links = [.. page.Descendants("nav").Descendants("a").Select(link => link.Attribute("href")!.Value[1..])];
        string[] ids = [.. page.Descendants().Select(element => element.Attribute("id")?.Value).OfType<string>()];

        Assert.Equal(ids.Where(id => links.Contains(id, StringComparer.Ordinal)), links, StringComparer.Ordinal);
        Assert.Equal(page.Descendants("h2").Count(), links.Length);
        Assert.Contains("advice", links, StringComparer.Ordinal);
    }

    [Fact]
    public void ACommaCultureChangesNothing() => Assert.Equal(SampleResults.Run().AllPages(), CommaCulture.Run(() => SampleResults.Run().AllPages().ToArray()), StringComparer.Ordinal);

    [Fact]
    public void HostileLabelsAreTextOnThePage()
    {
        string page = SampleResults.Run(SampleResults.Hostile()).Report();

        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<b>calibration", page, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;", page, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryElementIsClosed()
    {
        XDocument[] pages = [.. SampleResults.Run(SampleResults.Hostile(), SampleResults.Faulty()).AllPages().Select(Parsed)];

        Assert.All(pages, page => Assert.Equal("html", page.Root!.Name.LocalName));
        Assert.All(pages, page => Assert.Equal("en", page.Root!.Attribute("lang")!.Value));
    }

    [Fact]
    public void EveryTableHasACaptionAndNamedColumnsOfTheSameNumber()
    {
        foreach (XElement table in SampleResults.Run().AllPages().SelectMany(page => Parsed(page).Descendants("table")))
        {
            int heads = table.Element("thead")!.Descendants("th").Count();

            Assert.NotEmpty(table.Element("caption")!.Value);
            Assert.All(table.Element("thead")!.Descendants("th"), head => Assert.Equal("col", head.Attribute("scope")!.Value));
            Assert.All(table.Element("tbody")!.Elements("tr"), row => Assert.Equal(heads, row.Elements().Count()));
        }
    }

    [Fact]
    public void HeadingsLeaveOutNoLevel()
    {
        foreach (string page in SampleResults.Run().AllPages())
        {
            int[] levels = [.. Heading().Matches(page).Select(match => match.Groups["level"].Value[0] - '0')];

            Assert.Equal(1, levels[0]);
            Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 1));
        }
    }

    [Fact]
    public void EveryPictureSaysInWordsWhatItShowsAndLeadsToItsFile()
    {
        XElement[] pictures = [.. SampleResults.Run().AllPages().SelectMany(page => Parsed(page).Descendants("img"))];

        Assert.NotEmpty(pictures);
        Assert.All(pictures, picture => Assert.True(picture.Attribute("alt")!.Value.Length > 40));
        Assert.All(pictures, picture => Assert.EndsWith(".png", picture.Parent!.Attribute("href")!.Value, StringComparison.Ordinal));
    }

    [Fact]
    public void EveryLinkInsideThePageHasItsTarget()
    {
        XDocument page = Parsed(SampleResults.Run(SampleResults.Faulty()).Report());
        string[] targets = [.. page.Descendants().Attributes("id").Select(id => id.Value)];
        string[] links = [.. page.Descendants("a").Attributes("href").Select(link => link.Value).Where(link => link.StartsWith('#'))];

        Assert.Equal(targets.Length, targets.Distinct(StringComparer.Ordinal).Count());
        Assert.Contains("#verdicts", links, StringComparer.Ordinal);
        Assert.All(links, link => Assert.Contains(link[1..], targets, StringComparer.Ordinal));
    }

    [Fact]
    public void EveryCellThatIsNotPassLeadsToItsNumbersWithCauseAndAdvice()
    {
        XDocument page = Parsed(SampleResults.Run(SampleResults.Faulty()).Report());
        XElement[] links = [.. page.Descendants("a").Where(link => link.Parent!.Parent!.Attribute("class")?.Value is "cells" && ClassOf(link) is "reject" or "questionable")];

        Assert.Equal(SampleResults.Faulty().Channels.Sum(channel => channel.Cells.Count(cell => cell.Verdict != Grade.Pass)), links.Length);
        Assert.All(links, link =>
        {
            string evidence = page.Descendants().Single(one => string.Equals(one.Attribute("id")?.Value, link.Attribute("href")!.Value[1..], StringComparison.Ordinal)).Value;
            Assert.Matches("limit|not assessed: shorter than", evidence);
            Assert.Contains("What to do:", evidence, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void EveryCellHasANumberAShapeAndWords()
    {
        XElement[] marks = [.. Parsed(SampleResults.Run(SampleResults.Faulty()).Report()).Descendants("ol").Where(list => ClassOf(list) is "cells").Descendants("li").Elements()];

        Assert.Equal(18, marks.Length);
        Assert.All(marks, mark => Assert.Matches("^trial [0-9]+(\u25CB|\u25CC\\?|\u25B2|\u22A0)[A-Z]?(, .+)?: (pass|questionable|reject)", mark.Value));
        Assert.All(marks, mark => Assert.Equal("unseen", ClassOf(mark.Elements().Last())));
        Assert.Contains(marks, mark => mark.Value is "trial 3\u22A0L, happy: reject, mains, joined sites");
    }

    [Fact]
    public void APassWithSomethingNotAssessedDoesNotLookLikeAPass()
    {
        RecordingResult clean = SampleResults.Clean("p08");
        CellResult open = clean.Channels[0].Cells[0] with { NotAssessed = [new NotAssessed(ReasonCode.Drift, "the file is high-passed at 20 Hz")] };
        RecordingResult recording = clean with { Channels = [clean.Channels[0] with { Cells = [open, .. clean.Channels[0].Cells[1..]] }] };

        XDocument page = Parsed(SampleResults.Run(recording).Report());
        XElement mark = page.Descendants("a").First(link => link.Parent!.Parent!.Attribute("class")?.Value is "cells");

        Assert.StartsWith("trial 1\u25CC?", mark.Value, StringComparison.Ordinal);
        Assert.Equal("#channel-1-not-assessed", mark.Attribute("href")!.Value);
        Assert.Contains("high-passed", page.Descendants("tr").Single(row => row.Attribute("id")?.Value is "channel-1-not-assessed").Value, StringComparison.Ordinal);
    }

    [Fact]
    public void TheOverviewLeadsToPlacesThatThePagesOfTheRecordingsHave()
    {
        SampleRun run = SampleResults.Run(SampleResults.Faulty(), SampleResults.Hostile(), SampleResults.Clean("day1+p08"));
        string[] links = [.. Parsed(run.Report()).Descendants("a").Attributes("href").Select(link => link.Value).Where(link => link.Contains(".html#", StringComparison.Ordinal))];

        Assert.Contains("recordings/day1%2Bp07/report.html#channel-1-line-noise", links, StringComparer.Ordinal);
        Assert.All(links, link =>
        {
            string[] parts = link.Split('#');
            string id = Uri.UnescapeDataString(parts[0].Split('/')[1]);
            Assert.Contains($"id=\"{parts[1]}\"", run.PageOf(id), StringComparison.Ordinal);
        });
    }

    [Fact]
    public void ReasonsAreCountedOverAllRecordings()
    {
        RecordingResult other = SampleResults.Faulty() with { Id = "day9+p99" };
        XElement table = Parsed(SampleResults.Run(SampleResults.Faulty(), other).Report()).Descendants("table").Single(one => ClassOf(one) is "reasons");

        // Six trials of each cheek carry the bridge, three of them mains as well; one eye trial of each could not be judged, and drift is the brow's alone.
        Assert.Equal(
            ["joined sites bridge|12|2|2|day1+p07, cheek", "mains line-noise|6|2|2|day1+p07, cheek", "input that cannot be judged unusable-input|2|0|2|day1+p07, eye", "baseline drift drift|0|2|2|day1+p07, brow"],
            table.Element("tbody")!.Elements("tr").Select(row => string.Join('|', row.Elements().Select(cell => cell.Value))),
            StringComparer.Ordinal);
    }

    [Fact]
    public void AThousandRecordingsMakeAPageOfAFewMegabytes()
    {
        byte[] page = ReportPage.OfStudy(SampleResults.Run().Audit, LargeSamples.Study(recordings: 1000));

        Assert.InRange(page.Length, 500_000, 5_000_000);
    }

    [Fact]
    public void ARecordingWithNothingButBadTrialsMakesAPageOfAFewMegabytes()
    {
        byte[] page = ReportPage.OfRecording(SampleResults.Run().Audit, LargeSamples.Bad(trials: 360), ReportFigures.Beside([]));

        Assert.InRange(page.Length, 500_000, 6_000_000);
    }

    [Fact]
    public void EveryVerdictHasAWordAndAShape()
    {
        XElement[] verdicts = [.. SampleResults.Run().AllPages().SelectMany(page => Parsed(page).Descendants("span")).Where(span => ClassOf(span).StartsWith("verdict", StringComparison.Ordinal))];

        Assert.NotEmpty(verdicts);
        Assert.All(verdicts, verdict => Assert.Matches("^[\u25CB\u25B2\u22A0] (pass|questionable|reject)$", verdict.Value));
    }

    [Fact]
    public void ReadingsHaveWordsAndShapesOfTheirOwn()
    {
        XElement[] readings = [.. SampleResults.Run().AllPages().SelectMany(page => Parsed(page).Descendants("span")).Where(span => ClassOf(span) is "readings")];

        Assert.NotEmpty(readings);
        Assert.All(readings, reading => Assert.Matches("^([\u25CB\u25B3\u25C7\u25A1] (good|wait|doubtful|redo)|- not read)$", reading.Value));
    }

    [Fact]
    public void WithoutReadingsThereIsNoColumnForThem()
    {
        string with = SampleResults.Run(SampleResults.Faulty()).Report();
        SampleRun bare = SampleResults.Run(SampleResults.Clean("p08"));
        string without = (bare with { Audit = bare.Audit with { Impedance = null } }).Report();

        Assert.Contains("<th scope=\"col\">Impedance</th>", with, StringComparison.Ordinal);
        Assert.DoesNotContain("mpedance", without.Replace("high contact impedance", string.Empty, StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void ThePageNeedsNothingButItself()
    {
        string page = SampleResults.Run().PageOf("day1+p07", Png) + SampleResults.Run().Report();

        Assert.DoesNotContain("http://", page, StringComparison.Ordinal);
        Assert.DoesNotContain("https://", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<link", page, StringComparison.Ordinal);
        Assert.Contains("src=\"data:image/png;base64,iVBORw==\"", page, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", page, StringComparison.Ordinal);
    }

    [Fact]
    public void PicturesBeyondTheLimitAreShownFromTheirFiles()
    {
        byte[] large = new byte[ReportFigures.InlineLimitBytes + 1];

        Assert.Contains("src=\"recordings/day1%2Bp07/session-ribbon.png\"", SampleResults.Run(SampleResults.Faulty()).Report(large), StringComparison.Ordinal);
        Assert.Contains("src=\"session-ribbon.png\"", SampleResults.Run().PageOf("day1+p07", large), StringComparison.Ordinal);
    }

    [Fact]
    public void TheWorstRecordingComesFirst()
    {
        string page = SampleResults.Run(SampleResults.Clean("a"), SampleResults.Faulty()).Report();

        Assert.True(page.IndexOf("\"><bdi>day1&#x2B;p07</bdi></a>", StringComparison.Ordinal) < page.IndexOf("\"><bdi>a</bdi></a>", StringComparison.Ordinal));
    }

    // WCAG 2.2, success criterion 1.4.3 and its definition of relative luminance (W3C; formula from memory).
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void TextStandsOutFromItsGroundInLightAndDark(bool isDark)
    {
        ReportPalette palette = isDark ? ReportPalette.Dark : ReportPalette.Light;
        string[] texts = [palette.Ink, palette.Faint, palette.Link, palette.Pass, palette.Questionable, palette.Reject];

        foreach (string ground in new[] { palette.Paper, palette.Shade, palette.Glow })
        {
            Assert.All(texts, text => Assert.True(Contrast(text, ground) >= 4.5, $"{text} on {ground}"));
        }
    }

    [Fact]
    public void TheStyleHasNoColourOutsideItsPalettes()
    {
        string rest = ReportStyle.Css.Replace(ReportPalette.Light.Css, string.Empty, StringComparison.Ordinal).Replace(ReportPalette.Dark.Css, string.Empty, StringComparison.Ordinal);

        Assert.False(string.Equals(ReportStyle.Css, rest, StringComparison.Ordinal));
        Assert.DoesNotMatch("#[0-9a-fA-F]{3}", rest);
        Assert.Contains("@media print", rest, StringComparison.Ordinal);
        Assert.Contains("@media screen and (prefers-color-scheme: dark)", rest, StringComparison.Ordinal);
    }

    [Fact]
    public void BlackOnWhiteHasTheContrastOfTheStandard() => Assert.Equal(21, Contrast("#000000", "#ffffff"), 9);

    private static double Contrast(string one, string two)
    {
        double[] ordered = [.. new[] { Luminance(one), Luminance(two) }.Order()];
        return (ordered[1] + 0.05) / (ordered[0] + 0.05);
    }

    private static double Luminance(string colour)
    {
        double[] linear = [.. Enumerable.Range(0, 3)
            .Select(part => int.Parse(colour.AsSpan(1 + (2 * part), 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0)
            .Select(value => value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4))];
        return (0.2126 * linear[0]) + (0.7152 * linear[1]) + (0.0722 * linear[2]);
    }

    // The page is written so that it is well-formed XML once the three elements without an end are closed.
    private static XDocument Parsed(string page) => XDocument.Parse(
        Void().Replace(page, "${open}/>").Replace("<!DOCTYPE html>", string.Empty, StringComparison.Ordinal).Replace("&#x1B;", "?", StringComparison.Ordinal));

    private static string ClassOf(XElement span) => span.Attribute("class")?.Value ?? string.Empty;

    [GeneratedRegex("(?<open><(meta|img|br)\\b[^>]*)>", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Void();

    [GeneratedRegex("<h(?<level>[1-6])", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Heading();
}
