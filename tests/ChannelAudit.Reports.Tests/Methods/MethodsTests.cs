using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using ChannelAudit.Reports.Methods;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Methods;

public sealed partial class MethodsTests
{
    private static readonly SampleRun Run = SampleResults.Run();

    /// <summary>SciPy's binomtest(...).proportion_ci(method='wilson'), which also made the table of the signals' tests.</summary>
    [Fact]
    public void IntervalsAgreeWithSciPy()
    {
        string[][] rows =
        [
            .. File.ReadLines(RepositoryRoot.Fixture("oracles/wilson.tsv"))
                .Select(line => line.Split('\t'))
                .Where(row => row[0].EndsWith("@0.95", StringComparison.Ordinal)),
        ];

        Assert.Contains(rows, row => row[0].StartsWith("1500/24000@", StringComparison.Ordinal));
        foreach (string[] row in rows)
        {
            int[] counts = [.. row[0].Split('@')[0].Split('/').Select(part => int.Parse(part, CultureInfo.InvariantCulture))];
            (double low, double high) = new Share(counts[0], counts[1]).Interval!.Value;
            Assert.Equal(double.Parse(row[1], CultureInfo.InvariantCulture), low, 1e-9);
            Assert.Equal(double.Parse(row[2], CultureInfo.InvariantCulture), high, 1e-9);
        }
    }

    [Fact]
    public void MainsThatNobodySawAndSignalsThatOnlyHoldEventsAreNotCounted()
    {
        RecordingResult clean = SampleResults.Clean("a");
        RecordingResult guessed = clean with
        {
            Id = "b",
            Mains = new MainsResult(60, 60, "the stronger of 50 and 60 Hz; no clear peak to refine it"),
            Skipped = [new SkippedChannel("EDF Annotations", "annotation signal"), new SkippedChannel("Trigger", "no site of the setup")],
        };
        RecordingResult stated = clean with { Id = "c", Mains = new MainsResult(60, 60, "stated by the setup; no clear peak to refine it") };

        MethodsTally tally = Tally(SampleResults.Run(clean, guessed, stated));

        Assert.Equal((1, 1, 1), (tally.MainsUnseen, tally.Mains[60], tally.Mains[50]));
        Assert.Equal(1, tally.SkippedChannels);
        Assert.Contains("harmonics, 50 Hz (n = 1), 60 Hz (n = 1), no mains seen (n = 1).", Text(tally), StringComparison.Ordinal);
    }

    [Fact]
    public void RecordingsOtherThanTheRestAreCountedByKind()
    {
        MethodsTally tally = Tally(Run);
        tally.Odd = SampleStudy.Odd;

        Assert.Contains(
            "12 recordings were named as other than the rest of the study (same signal: 2, sampling rate: 9, gain: 1; this changed no verdict) [say here what was done about them].",
            Text(tally),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("engineering judgement: twice", "engineering judgement: twice")]
    [InlineData("http://x.invalid", "http\\://x.invalid")]
    [InlineData(":smile:", "\\:smile:")]
    [InlineData("line_rms and _so_", "line_rms and \\_so\\_")]
    [InlineData("a|b *c*", "a\\|b \\*c\\*")]
    public void OnlyWhatWouldActIsEscaped(string text, string escaped) => Assert.Equal(escaped, MarkdownText.Escape(text));

    [Fact]
    public void NothingHasNoShare()
    {
        Assert.Null(new Share(0, 0).Value);
        Assert.Null(new Share(0, 0).Interval);
        Assert.Equal("none of 0", new Share(0, 0).ToString());
        Assert.Equal("15 of 148 (10.1 %, 6.2 to 16.0 %)", new Share(15, 148).ToString());
    }

    [Fact]
    public void CountsAreThoseOfTheVerdictsTable()
    {
        JsonNode json = Json(Tally(Run));
        string[][] scored = [.. Scored(VerdictsTsv.Render(Run.Recordings))];

        AssertVerdicts(json["trials"]!, scored);
        Assert.Contains(scored, row => row[^1] is "reject");
        foreach (JsonNode? row in json["by_channel"]!.AsArray())
        {
            AssertVerdicts(row!, [.. scored.Where(cells => string.Equals(cells[1], row!["channel"]!.GetValue<string>(), StringComparison.Ordinal))]);
        }

        foreach (JsonNode? row in json["by_condition"]!.AsArray())
        {
            string condition = row!["condition"]?.GetValue<string>() ?? "n/a";
            AssertVerdicts(row, [.. scored.Where(cells => string.Equals(cells[3], condition, StringComparison.Ordinal))]);
        }

        foreach (JsonNode? row in json["by_reason"]!.AsArray())
        {
            string reason = row!["reason"]!.GetValue<string>();
            Assert.Equal(scored.Count(cells => cells[^1] is "reject" && cells[7].Split(';').Contains(reason, StringComparer.Ordinal)), Count(row["trials_rejected"]));
            Assert.Equal(scored.Count(cells => cells[^1] is "questionable" && cells[7].Split(';').Contains(reason, StringComparer.Ordinal)), Count(row["trials_questionable"]));
            Assert.Equal(scored.Count(cells => cells[8].Split(';').Contains(reason, StringComparer.Ordinal)), Count(row["trials_not_assessed"]));
        }

        Assert.Equal(["angry", "happy", "n/a"], scored.Select(cells => cells[3]).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.Equal(3, json["by_condition"]!.AsArray().Count);
        Assert.Equal(scored.Count(cells => cells[8] is not "n/a"), Count(json["not_assessed"]!["trials"]));
    }

    [Fact]
    public void ChannelsAreCountedOnceARecording()
    {
        JsonNode json = Json(Tally(Run));

        Assert.Equal((5, 1, 1), (Count(json["channels"]!["pass"]), Count(json["channels"]!["questionable"]), Count(json["channels"]!["reject"])));
        Assert.Equal(7, json["data"]!["rates"]![0]!["channels"]!.GetValue<int>());
        Assert.Equal(2000, json["data"]!["rates"]![0]!["hz"]!.GetValue<double>());
        Assert.Equal((3, 1, 2, 2), (
            json["data"]!["recordings"]!.GetValue<int>(),
            json["data"]!["unread"]!.GetValue<int>(),
            json["data"]!["rest_trials"]!.GetValue<int>(),
            json["data"]!["task_trials"]!.GetValue<int>()));
        Assert.Equal(2, Count(json["not_assessed"]!["channels"]));
    }

    [Fact]
    public void EveryShareOfTheTextStandsInTheJson()
    {
        MethodsTally tally = Tally(Run);
        HashSet<string> known = new(StringComparer.Ordinal);
        Collect(Json(tally), known);

        string[] shares = [.. Shares().Matches(Text(tally)).Select(match => match.Value)];

        Assert.True(shares.Length > 20);
        Assert.All(shares, share => Assert.Contains(share, known));
    }

    [Fact]
    public void TheTextNamesVersionHashesLimitsAndWhatWasNotAssessed()
    {
        string text = Text(Tally(Run));

        Assert.Contains("ChannelAudit 0.1.0", text, StringComparison.Ordinal);
        Assert.Contains(SampleResults.CriteriaSha256, text, StringComparison.Ordinal);
        Assert.Contains(new string('5', 64), text, StringComparison.Ordinal);
        Assert.Contains("line_rms \u2265 5 \u00B5V and line_ratio \u2265 0 dB", text, StringComparison.Ordinal);
        Assert.Contains("1 recording could not be read and is in no other number here.", text, StringComparison.Ordinal);
        Assert.Contains("No scoring filter was stated", text, StringComparison.Ordinal);
        Assert.Contains("not evidence that the fault was absent", text, StringComparison.Ordinal);
        Golden.Match("methods-paragraph.md", text);
    }

    [Fact]
    public void AStatedFilterIsNamed()
    {
        RecordingResult filtered = SampleResults.Clean("x") with { Scoring = "high-pass 20 Hz (order 2)" };

        Assert.Contains("on what the scoring filter leaves: high-pass 20 Hz (order 2) (n = 1).", Text(Tally(SampleResults.Run(filtered))), StringComparison.Ordinal);
        Assert.Contains("; 1 recording without one as stored.", Text(Tally(SampleResults.Run(filtered, SampleResults.Clean("y")))), StringComparison.Ordinal);
    }

    [Fact]
    public void ARunWithoutRecordingsHasItsText()
    {
        string text = Text(new MethodsTally());

        Assert.Contains("Excluded (final verdict reject) were none of 0 scored trials", text, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
    }

    [Fact]
    public void HostileLabelsStayTextOnTheirLines()
    {
        string text = Text(Tally(SampleResults.Run(SampleResults.Hostile())));

        Assert.DoesNotContain("<script>", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\u001b", text, StringComparison.Ordinal);
        string[] tables = [.. text.Split('\n').Where(line => line.StartsWith('|'))];
        Assert.True(tables.Length > 2 * SampleResults.HostileLabels.Length);
        Assert.Contains("\\<script\\>alert('x')\\</script\\>", text, StringComparison.Ordinal);
    }

    [Fact]
    public void LanguageSettingsChangeNothing() => Assert.Equal(Text(Tally(Run)), CommaCulture.Run(() => Text(Tally(Run))));

    [Fact]
    public void AddingKeepsNoRecording()
    {
        MethodsTally tally = new();
        WeakReference added = AddOne(tally);
        GC.Collect();

        Assert.False(added.IsAlive);
        Assert.Equal(1, tally.Recordings.Count);
    }

    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.NoInlining)]
    private static WeakReference AddOne(MethodsTally tally)
    {
        RecordingResult recording = SampleResults.Faulty();
        tally.Add(recording);
        return new WeakReference(recording);
    }

    private static MethodsTally Tally(SampleRun run)
    {
        MethodsTally tally = new() { Unread = run.Unread.Length };
        foreach (RecordingResult recording in run.Recordings)
        {
            tally.Add(recording);
        }

        return tally;
    }

    private static MethodsOrigin Origin() => new(
        Run.Version, Run.Criteria, new StoredInput(Run.Setup.FileName, Run.Setup.Sha256), new StoredInput(Run.Impedance!.FileName, Run.Impedance.Sha256));

    private static JsonNode Json(MethodsTally tally) => JsonNode.Parse(MethodsJson.Render(tally, Origin()))!;

    private static string Text(MethodsTally tally) => Encoding.UTF8.GetString(MethodsText.Render(tally, Origin()));

    // Rest and task of the two labelled recordings are not scored; in the third all are.
    private static IEnumerable<string[]> Scored(byte[] table) => Encoding.UTF8.GetString(table)
        .Split('\n', StringSplitOptions.RemoveEmptyEntries)
        .Skip(1)
        .Select(line => line.Split('\t'))
        .Where(row => row[3] is not ("rest" or "raise lip corner"));

    private static void AssertVerdicts(JsonNode shares, string[][] rows)
    {
        foreach (Grade grade in new[] { Grade.Pass, Grade.Questionable, Grade.Reject })
        {
            string word = grade.ToString().ToLowerInvariant();
            Assert.Equal(rows.Count(row => string.Equals(row[^1], word, StringComparison.Ordinal)), Count(shares[word]));
            Assert.Equal(rows.Length, shares[word]!["of"]!.GetValue<int>());
        }
    }

    private static int Count(JsonNode? share) => share!["count"]!.GetValue<int>();

    private static void Collect(JsonNode node, HashSet<string> known)
    {
        if (node is JsonObject share && share.ContainsKey("count") && share["low"] is { } low)
        {
            string[] percent = [.. new[] { share["share"]!, low, share["high"]! }.Select(one => (100 * one.GetValue<double>()).ToString("F1", CultureInfo.InvariantCulture))];
            known.Add(string.Create(CultureInfo.InvariantCulture, $"{Count(share)} of {share["of"]!.GetValue<int>()} ({percent[0]} %, {percent[1]} to {percent[2]} %)"));
        }

        IEnumerable<JsonNode?> children = node is JsonObject item ? item.Select(entry => entry.Value) : node is JsonArray list ? list : [];
        foreach (JsonNode? child in children.Where(child => child is not null))
        {
            Collect(child!, known);
        }
    }

    [GeneratedRegex(@"\d+ of \d+ \([^)]*\)", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Shares();
}
