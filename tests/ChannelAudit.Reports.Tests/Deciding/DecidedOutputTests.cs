using System.Text.Json;
using ChannelAudit.Reports.Bids;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Deciding;
using ChannelAudit.Reports.Methods;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;
using Json.Schema;

namespace ChannelAudit.Reports.Tests.Deciding;

/// <summary>Computed and final beside each other in everything that is written, and hostile text in a reason as text.</summary>
public sealed class DecidedOutputTests : IDisposable
{
    private static readonly Dictionary<string, JsonSchema> Schemas = new(StringComparer.Ordinal);

    private readonly DecidedRun _run = new();

    public void Dispose() => _run.Dispose();

    [Fact]
    public void TablesHaveBoth()
    {
        _run.Decide("cheek", null, Grade.Pass);
        _run.Decide("brow", 4, Grade.Reject);
        _run.Write();

        Assert.Contains("day1+p07\tcheek\treject\tline-noise;bridge\tdrift\tpass\t6\t0\t3\t3\t", _run.Read("channels.tsv"), StringComparison.Ordinal);
        Assert.Contains("day1+p07\tbrow\t4\tangry\t30.1234568\t3\tpass\tn/a\tn/a\treject\n", _run.Read("verdicts.tsv"), StringComparison.Ordinal);

        // One trial of the condition, which passes by rule and cannot be used: it lacks 2 of 2.
        Assert.Contains("day1+p07\tp07\tbrow\tangry\t1\t1\t0\t0\t0\t2\tfalse\t", _run.Read("conditions.tsv"), StringComparison.Ordinal);
    }

    [Fact]
    public void TheRunHasBothCountsAndHowFarTheLedgerHadGrown()
    {
        _run.Decide("cheek", null, Grade.Pass);
        _run.Decide("brow", 4, Grade.Reject);
        _run.Withdraw(2);
        _run.Write();

        using JsonDocument audit = JsonDocument.Parse(_run.Read("audit.json"));
        JsonElement counts = audit.RootElement.GetProperty("counts");
        JsonElement decisions = audit.RootElement.GetProperty("decisions");

        Assert.Equal("{\"pass\":6,\"questionable\":1,\"reject\":0}", Compact(counts.GetProperty("channels")));
        Assert.Equal("{\"pass\":5,\"questionable\":1,\"reject\":1}", Compact(counts.GetProperty("computed_channels")));
        Assert.Equal((3, _run.Ledger.Mark.Head), (decisions.GetProperty("lines").GetInt32(), decisions.GetProperty("head").GetString()));
        Assert.Equal((1, 1, 0), (decisions.GetProperty("in_force").GetInt32(), decisions.GetProperty("withdrawn").GetInt32(), decisions.GetProperty("stale").GetInt32()));
    }

    [Fact]
    public void FilesFollowTheirSchemas()
    {
        _run.Decide("cheek", null, Grade.Pass);
        _run.Decide(null, 6, Grade.Reject);
        _run.Decide("brow", 4, Grade.Questionable, "\"<=\u00E9>\"");
        _run.Withdraw(2);
        _run.Write();

        RequireValid("audit", _run.Read("audit.json"));
        RequireValid("methods", _run.Read("methods-paragraph.json"));
        Assert.All(_run.Read("decisions.jsonl").Split('\n')[..^1], line => RequireValid("decision", line));
    }

    [Fact]
    public void WithoutDecisionsNothingSpeaksOfThem()
    {
        Assert.DoesNotContain("decision", _run.Read("audit.json"), StringComparison.Ordinal);
        Assert.DoesNotContain("Decisions of persons", _run.Read("report.html"), StringComparison.Ordinal);
        Assert.DoesNotContain("decided", _run.Read(MethodsJson.FileName), StringComparison.Ordinal);
    }

    [Fact]
    public void TheMethodsParagraphSaysInWhichDirection()
    {
        _run.Decide("cheek", null, Grade.Pass);
        _run.Decide("brow", 4, Grade.Reject);
        _run.Decide("cheek", 3, Grade.Questionable);
        _run.Decide("eye", 5, Grade.Pass);
        _run.Write();

        Assert.Contains(
            "of 1 channel 0 became worse, 1 better and 0 stayed, of 3 scored trials 1 became worse, 1 better and 1 stayed;", _run.Read(MethodsText.FileName), StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(_run.Read(MethodsJson.FileName));
        Assert.Equal("{\"channels\":{\"worse\":0,\"better\":1,\"same\":0},\"trials\":{\"worse\":1,\"better\":1,\"same\":1},\"stale\":0}", Compact(json.RootElement.GetProperty("decided")));
    }

    [Fact]
    public void TheExportTakesItsStatusFromThePersonAndSaysSo()
    {
        using Output.TemporaryFolder place = new();
        _run.Decide("cheek", null, Grade.Pass, "the notch of our filter takes it");
        _run.Decide("brow", 4, Grade.Reject, "=coughed");
        BidsExport.Write(_run.Audit, Path.Combine(place.Path, "out"), CancellationToken.None);

        string channels = place.Read("out/sub-p07/ses-day1/emg/sub-p07_ses-day1_task-unnamed_desc-quality_channels.tsv");
        string events = place.Read("out/sub-p07/ses-day1/emg/sub-p07_ses-day1_task-unnamed_desc-quality_events.tsv");

        Assert.Contains(
            "\tgood\tpass: decided by a person: the notch of our filter takes it; computed reject: mains (line-noise), joined sites (bridge)\tcheek\tpass\treject\t", channels, StringComparison.Ordinal);
        Assert.Contains("\tbad\treject: decided by a person: =coughed; computed pass\treject\tpass\t", events, StringComparison.Ordinal);
        Assert.DoesNotContain("R. Viewer", channels + events, StringComparison.Ordinal);
    }

    [Fact]
    public void PagesSayWhoWhenAndWhyBesideTheComputedVerdict()
    {
        _run.Decide("cheek", null, Grade.Pass, "our notch takes it");
        _run.Decide("brow", 4, Grade.Reject, "coughed");
        _run.Write();

        string page = _run.Read("recordings/day1+p07/report.html");
        string study = _run.Read("report.html");

        Assert.Contains("<bdi>R. Viewer</bdi> on 2026-03-12: <bdi>our notch takes it</bdi>. Computed: <span class=\"verdict reject\">", page, StringComparison.Ordinal);
        Assert.Contains("href=\"#decision-2\" title=\"trial 4, angry: reject; decided by R. Viewer on 2026-03-12: coughed; computed: pass\"", page, StringComparison.Ordinal);
        Assert.Contains("<tr id=\"decision-2\">", page, StringComparison.Ordinal);
        Assert.Contains("decided; computed: <span class=\"verdict reject\">", page, StringComparison.Ordinal);
        Assert.Contains("Decisions of persons: 2 in force.", study, StringComparison.Ordinal);
        Assert.Contains("By rule alone, before decisions of persons: 1 reject, 1 questionable, 5 pass.", study, StringComparison.Ordinal);
        Assert.Contains("recordings/day1%2Bp07/report.html#decisions", study, StringComparison.Ordinal);
    }

    [Fact]
    public void HostileTextIsTextEverywhere()
    {
        const string hostile = "<script>alert('x')</script> =HYPERLINK(\"http://example.invalid\") \u202Eback";
        _run.Decide("cheek", null, Grade.Pass, hostile, by: "<img src=x onerror=alert(1)>");
        _run.Write();

        string pages = _run.Read("report.html") + _run.Read("recordings/day1+p07/report.html");
        string list = LedgerList.Render(_run.Audit, new TerminalStyle());

        Assert.DoesNotContain("<script", pages, StringComparison.Ordinal);
        Assert.DoesNotContain("<img src=x", pages, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;", pages, StringComparison.Ordinal);
        Assert.DoesNotContain('\u202E', list);
        Assert.DoesNotContain('<', _run.Read("decisions.jsonl"));
        Assert.Equal(hostile, _run.Ledger.Lines[0].Reason);
    }

    [Fact]
    public void ChannelsAndTrialsWithHostileLabelsAreDecidedAbout()
    {
        using DecidedRun run = new(SampleResults.Hostile(), SampleResults.Clean("day1+p08"));
        for (int label = 0; label < SampleResults.HostileLabels.Length; label++)
        {
            run.Decide(SampleResults.HostileLabels[label], label + 1, Grade.Reject, recording: "hostile");
        }

        run.Write();

        Assert.Equal(SampleResults.HostileLabels.ToArray(), run.Ledger.Lines.Select(line => line.Channel!).ToArray(), StringComparer.Ordinal);
        Assert.Equal(SampleResults.HostileLabels.ToArray(), run.Ledger.Lines.Select(line => line.Trial!.Label!).ToArray(), StringComparer.Ordinal);
        Assert.DoesNotContain("<script", run.Read("recordings/hostile/report.html"), StringComparison.Ordinal);
        Assert.Contains($"{SampleResults.HostileLabels.Length} in force", run.Read("report.html"), StringComparison.Ordinal);
        Assert.All(LedgerList.Render(run.Audit, new TerminalStyle()), character => Assert.False(char.IsControl(character) && character != '\n'));
    }

    [SkippableFact]
    public void TheFewLinesOfPythonInTheDocumentsFollowTheChain()
    {
        const string python = "/usr/bin/python3";
        Skip.IfNot(File.Exists(python), "no python3");
        _run.Decide("cheek", null, Grade.Pass, "\u00E9 \"quoted\"");
        _run.Decide("brow", 4, Grade.Reject);
        string code = File.ReadAllText(RepositoryRoot.Fixture("../docs/file-formats.md"))
            .Split("## decisions.jsonl", 2)[1].Split("```python\n")[1].Split("```")[0].Replace("DIR/", _run.Folder + "/", StringComparison.Ordinal);

        string head = Python(python, code);
        string ledger = _run.Read("decisions.jsonl");
        File.WriteAllText(Path.Combine(_run.Folder, "decisions.jsonl"), ledger.Replace("\"verdict\":\"reject\"", "\"verdict\":\"pass\"", StringComparison.Ordinal));

        Assert.Equal($"2 {LedgerHead(ledger)}\n", head);
        Assert.Contains("AssertionError", Python(python, code), StringComparison.Ordinal);
    }

    private static string LedgerHead(string ledger) => ledger.TrimEnd('\n').Split("\"sha256\":\"")[^1].TrimEnd('}').TrimEnd('"');

    private static string Python(string program, string code)
    {
        System.Diagnostics.ProcessStartInfo start = new(program, ["-c", code]) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        using System.Diagnostics.Process process = System.Diagnostics.Process.Start(start)!;
        string text = process.StandardOutput.ReadToEnd() + process.StandardError.ReadToEnd();
        process.WaitForExit();
        return text;
    }

    private static string Compact(JsonElement element) => JsonSerializer.Serialize(element);

    private static void RequireValid(string schema, string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        EvaluationResults found = Schema(schema).Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(found.IsValid, string.Join('\n', (found.Details ?? []).Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))));
    }

    private static JsonSchema Schema(string name) => Schemas.TryGetValue(name, out JsonSchema? known) ? known : Schemas[name] = JsonSchema.FromText(
        File.ReadAllText(RepositoryRoot.Fixture($"../docs/schemas/{name}.schema.json")).Replace("urn:channelaudit:", "urn:channelaudit:decided:", StringComparison.Ordinal));
}
