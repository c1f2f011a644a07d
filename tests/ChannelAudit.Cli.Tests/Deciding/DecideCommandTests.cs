using ChannelAudit.Cli.Commands;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Cli.Tests.Piloting;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Output;
using ChannelAudit.Synthesis;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Deciding;

/// <summary><c>decide</c> on audits that the product's own engine made of three made recordings.</summary>
public sealed class DecideCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public DecideCommandTests()
    {
        Directory.CreateDirectory(_folder.In("study"));
        for (int number = 1; number <= 3; number++)
        {
            EdfFiles.Write(MadeRecording.Make(PilotFolder.Plan((ulong)number)), _folder.In(FormattableString.Invariant($"study/P{number}.edf")));
        }
    }

    private string Audit => _folder.In("audit");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task ADecisionIsTheFinalVerdictEverywhereAndTheComputedOneStays()
    {
        await Screen("audit");
        string channel = Cells("verdicts.tsv")[0][1];

        CommandRun run = await Decide("--recording", "P2", "--channel", channel, "--trial", "1", "--verdict", "reject", "--reason", "the lead was touched", "--by", "R. Viewer");

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.StartsWith($"Kept as decision 1: P2, {channel}, trial 1 (", run.Output, StringComparison.Ordinal);
        Assert.EndsWith($"Tables and pages in {Audit} are up to date.\n", run.Output, StringComparison.Ordinal);
        string[] changed = Assert.Single(Cells("verdicts.tsv"), row => !string.Equals(row[6], row[9], StringComparison.Ordinal));
        Assert.Equal(["P2", channel, "1", "reject"], [changed[0], changed[1], changed[2], changed[9]], StringComparer.Ordinal);
        string page = await File.ReadAllTextAsync(_folder.In("audit/recordings/P2/report.html"));
        Assert.Contains("id=\"decision-1\"", page, StringComparison.Ordinal);
        Assert.Contains("the lead was touched", page, StringComparison.Ordinal);
        Assert.Contains("R. Viewer", page, StringComparison.Ordinal);
        Assert.DoesNotContain("decision-1", await File.ReadAllTextAsync(_folder.In("audit/recordings/P1/report.html")), StringComparison.Ordinal);
        Assert.Contains("Decisions of persons: 1 in force.", await File.ReadAllTextAsync(_folder.In("audit/report.html")), StringComparison.Ordinal);
        Assert.Contains("Persons decided over computed verdicts", await File.ReadAllTextAsync(_folder.In("audit/methods-paragraph.md")), StringComparison.Ordinal);
        Assert.DoesNotContain("the lead was touched", await File.ReadAllTextAsync(_folder.In("audit/recordings/P2/result.json")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task TheSameBytesWhateverTheWay()
    {
        await Screen("audit", "--figures", "all");
        await Decide("--recording", "P1", "--channel", Cells("channels.tsv")[0][1], "--verdict", "reject", "--reason", "wrong site", "--by", "R. Viewer");
        await Decide("--recording", "P3", "--trial", "2", "--verdict", "questionable", "--reason", "coughed", "--by", "R. Viewer");
        Dictionary<string, string> decided = Files("audit");

        CommandRun again = await Screen("audit", "--figures", "all");
        Dictionary<string, string> screened = Files("audit");
        Directory.CreateDirectory(_folder.In("fresh"));
        File.Copy(_folder.In("audit/decisions.jsonl"), _folder.In("fresh/decisions.jsonl"));
        CommandRun fresh = await Screen("fresh", "--figures", "all");

        Assert.Equal(decided, screened);
        Assert.Equal(decided, Files("fresh"));
        Assert.Contains("Nothing has changed since", again.Output, StringComparison.Ordinal);
        Assert.Contains("Decisions of persons: 2 in force.", again.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("decided by a person", fresh.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AnAuditOfOneRecordingNeedsNoIdAndComesToTheSameBytesToo()
    {
        await CommandRun.With(Engine(), CancellationToken.None, "screen", _folder.In("study/P1.edf"), "--out", Audit);
        CommandRun run = await Decide("--channel", Cells("channels.tsv")[0][1], "--verdict", "questionable", "--reason", "unsure", "--by", "R. Viewer");
        Directory.CreateDirectory(_folder.In("fresh"));
        File.Copy(_folder.In("audit/decisions.jsonl"), _folder.In("fresh/decisions.jsonl"));

        await CommandRun.With(Engine(), CancellationToken.None, "screen", _folder.In("study/P1.edf"), "--out", _folder.In("fresh"));

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.Equal(Files("fresh"), Files("audit"));
        Assert.False(File.Exists(_folder.In("audit/recordings/P1/report.html")));
    }

    [Fact]
    public async Task AWithdrawalBringsBackTheBytesBeforeButForTheLedger()
    {
        await Screen("audit");
        string[] tables = ["verdicts.tsv", "channels.tsv", "conditions.tsv"];
        string[] before = [.. tables.Select(table => File.ReadAllText(_folder.In("audit/" + table)))];
        await Decide("--recording", "P1", "--trial", "1", "--verdict", "reject", "--reason", "coughed", "--by", "R. Viewer");

        CommandRun run = await Decide("--withdraw", "1", "--reason", "it was P2", "--by", "R. Viewer");
        CommandRun list = await Decide();
        CommandRun twice = await Decide("--withdraw", "1", "--reason", "again", "--by", "R. Viewer");

        Assert.StartsWith("Kept as decision 2: withdraws decision 1\n", run.Output, StringComparison.Ordinal);
        Assert.Equal(before, tables.Select(table => File.ReadAllText(_folder.In("audit/" + table))), StringComparer.Ordinal);
        Assert.Contains("\n    withdrawn by 2\n", list.Output, StringComparison.Ordinal);
        Assert.Contains("2026-03-12 12:00 UTC, R. Viewer: coughed\n", list.Output, StringComparison.Ordinal);
        Assert.Contains("/decisions.jsonl: decision 1 was withdrawn already, by 2\nhint: ", twice.Error, StringComparison.Ordinal);
        Assert.Equal(2, (await File.ReadAllLinesAsync(_folder.In("audit/decisions.jsonl"))).Length);
    }

    [Fact]
    public async Task ADecisionOnARecordingThatChangedIsNotAppliedAndSaidToBeStale()
    {
        await Screen("audit");
        string channel = Cells("channels.tsv")[0][1];
        await Decide("--recording", "P2", "--channel", channel, "--verdict", "reject", "--reason", "wrong site", "--by", "R. Viewer");
        await Decide("--recording", "P1", "--channel", channel, "--verdict", "reject", "--reason", "wrong site", "--by", "R. Viewer");
        byte[] bytes = await File.ReadAllBytesAsync(_folder.In("study/P2.edf"));
        bytes[^1000] ^= 1;
        await File.WriteAllBytesAsync(_folder.In("study/P2.edf"), bytes);
        File.Delete(_folder.In("study/P1.edf"));

        CommandRun run = await Screen("audit");
        CommandRun list = await Decide();

        string output = run.Output.ReplaceLineEndings(" ");
        Assert.Contains("Decisions of persons: 2 stale (not applied).", output, StringComparison.Ordinal);
        Assert.Contains($"decisions.jsonl, line 1: P2, {channel}: not applied: the recording has changed since (another SHA-256); decide again, or withdraw it", output, StringComparison.Ordinal);
        Assert.Contains("decisions.jsonl, line 2: not applied: there is no recording 'P1' in this audit", output, StringComparison.Ordinal);
        Assert.All(Cells("channels.tsv"), row => Assert.Equal(row[2], row[5]));
        Assert.Contains("another SHA-256", await File.ReadAllTextAsync(_folder.In("audit/audit.json")), StringComparison.Ordinal);
        Assert.Contains("another SHA-256", await File.ReadAllTextAsync(_folder.In("audit/recordings/P2/report.html")), StringComparison.Ordinal);
        Assert.Contains("there is no recording &#x27;P1&#x27;", await File.ReadAllTextAsync(_folder.In("audit/report.html")), StringComparison.Ordinal);
        Assert.Equal(2, list.Output.Split("stale, not applied").Length - 1);
    }

    [Fact]
    public async Task TrialsThatChangedMakeTheirDecisionsStale()
    {
        await Screen("audit");
        await Decide("--recording", "P1", "--trial", "1", "--verdict", "reject", "--reason", "coughed", "--by", "R. Viewer");
        _folder.Write("study/P1_events.tsv", "onset\tduration\ttrial_type\n1\t3\trest\n");

        CommandRun run = await Screen("audit");

        Assert.Contains("all channels: not applied: trial 1 is another one now: ", run.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.All(Cells("verdicts.tsv"), row => Assert.Equal(row[6], row[9]));
    }

    [Fact]
    public async Task ALedgerThatWasTouchedStopsEveryReaderAndWritesNothing()
    {
        await Screen("audit");
        await Decide("--recording", "P1", "--trial", "1", "--verdict", "reject", "--reason", "coughed", "--by", "R. Viewer");
        await Decide("--recording", "P1", "--trial", "2", "--verdict", "reject", "--reason", "coughed", "--by", "R. Viewer");
        string path = _folder.In("audit/decisions.jsonl");
        string[] lines = await File.ReadAllLinesAsync(path);
        await File.WriteAllTextAsync(path, lines[0] + "\n");
        Dictionary<string, string> before = Files("audit");

        CommandRun[] runs =
        [
            await Screen("audit"), await Decide(), await CommandRun.Of("compare", Audit, Audit), await CommandRun.Of("export", "bids", Audit, "--to", _folder.In("bids")),
            await Decide("--recording", "P1", "--trial", "3", "--verdict", "reject", "--reason", "coughed", "--by", "R. Viewer"),
        ];

        Assert.All(runs, run => Assert.StartsWith($"error: {Audit}/decisions.jsonl: 1 lines, but audit.json was written from 2: its end was cut off, or it is gone\nhint: ", run.Error, StringComparison.Ordinal));
        Assert.All(runs, run => Assert.Equal((ExitCode.Usage, string.Empty), (run.Code, run.Output)));
        Assert.Equal(before, Files("audit"));
    }

    [Fact]
    public async Task ATornTailIsToldByScreenAndKeptAsideByTheNextDecision()
    {
        await Screen("audit");
        await File.AppendAllTextAsync(_folder.In("audit/decisions.jsonl"), "{\"format\":\"chan");

        CommandRun screened = await Screen("audit");
        CommandRun exported = await CommandRun.Of("export", "bids", Audit, "--to", _folder.In("bids"));
        CommandRun run = await Decide("--recording", "P1", "--trial", "1", "--verdict", "reject", "--reason", "coughed", "--by", "R. Viewer");

        Assert.Contains("/decisions.jsonl, line 1: 15 bytes of a decision that was broken off", exported.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Done, exported.Code);
        Assert.Contains("15 bytes of a decision that was broken off", screened.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.Equal("{\"format\":\"chan\n", await File.ReadAllTextAsync(_folder.In("audit/decisions.torn")));
        Assert.Single(Ledger.Read(Audit).Lines);
        await Screen("audit");
        Assert.True(File.Exists(_folder.In("audit/decisions.torn")));
    }

    [Fact]
    public async Task WhenTablesCannotBeWrittenTheDecisionIsKeptAndTheNextOneShowsIt()
    {
        await Screen("audit");
        string stored = _folder.In("audit/recordings/P3/measures.tsv");
        string measures = await File.ReadAllTextAsync(stored);
        await File.WriteAllTextAsync(stored, measures + "x");

        CommandRun run = await Decide("--recording", "P1", "--trial", "1", "--verdict", "reject", "--reason", "coughed", "--by", "R. Viewer");
        await File.WriteAllTextAsync(stored, measures);
        CommandRun list = await Decide();

        Assert.StartsWith("Kept as decision 1: ", run.Output, StringComparison.Ordinal);
        Assert.StartsWith($"error: the decision is kept, but tables and pages are as before: {Audit}/recordings/P3: files are not as they were written", run.Error, StringComparison.Ordinal);
        Assert.Contains("do not decide again", run.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.EndsWith("were behind, and are up to date now.\n", list.Output, StringComparison.Ordinal);
        Assert.Contains(Cells("verdicts.tsv"), row => string.Equals(row[9], "reject", StringComparison.Ordinal) && string.Equals(row[2], "1", StringComparison.Ordinal));
    }

    [Fact]
    public async Task TwoAtOnceAreBothKeptAndShown()
    {
        await Screen("audit");

        CommandRun[] runs = await Task.WhenAll(Enumerable.Range(1, 4).Select(trial => Task.Run(() => Decide(
            "--recording", "P1", "--trial", FormattableString.Invariant($"{trial}"), "--verdict", "reject", "--reason", "coughed", "--by", "R. Viewer"))));

        Assert.All(runs, run => Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error)));
        Assert.Equal(4, Ledger.Read(Audit).Lines.Length);
        Assert.All(Cells("verdicts.tsv").Where(row => row[0] is "P1" && row[2] is "1" or "2" or "3" or "4"), row => Assert.True(row[0] is not "P1" || row[9] is "reject"));
    }

    [Fact]
    public async Task ManyAreTakenFromATableAllOrNone()
    {
        await Screen("audit");
        string good = _folder.Write("good.tsv", "recording\tchannel\ttrial\tverdict\treason\nP1\tn/a\t1\treject\tcoughed\nP2\tn/a\t2\tpass\t=looked fine\n");
        string bad = _folder.Write("bad.tsv", "recording\tchannel\ttrial\tverdict\treason\nP1\tn/a\t1\treject\tcoughed\nP9\tn/a\t2\tpass\tlooked fine\n");
        string odd = _folder.Write("odd.tsv", "recording\ttrial\tverdict\treason\nP1\t1\trejct\tcoughed\n");

        CommandRun none = await Decide("--from", bad, "--by", "R. Viewer");
        CommandRun nobody = await Decide("--from", good);
        CommandRun misspelt = await Decide("--from", odd, "--by", "R. Viewer");
        bool isThere = File.Exists(_folder.In("audit/decisions.jsonl"));
        CommandRun both = await Decide("--from", good, "--by", "R. Viewer");

        Assert.False(isThere);
        Assert.StartsWith($"error: bad.tsv, line 3: {Audit}: there is no recording 'P9'\nhint: known here: P1, P2, P3\n", none.Error, StringComparison.Ordinal);
        Assert.StartsWith("error: good.tsv, line 2: no by\nhint: say who decides", nobody.Error, StringComparison.Ordinal);
        Assert.Equal("error: odd.tsv, line 2: 'rejct' is no verdict\nhint: did you mean 'reject'?\n", misspelt.Error);
        Assert.Equal((ExitCode.Done, string.Empty), (both.Code, both.Error));
        Assert.Equal("=looked fine", Ledger.Read(Audit).Lines[1].Reason);
    }

    [Fact]
    public async Task WhatCannotBeMeantIsOneErrorAndOneHint()
    {
        await Screen("audit");
        string channel = Cells("channels.tsv")[0][1];
        string[] who = ["--verdict", "pass", "--reason", "fine", "--by", "R. Viewer"];

        (string Expected, CommandRun Run)[] runs =
        [
            ($"error: {Audit}: of 3 recordings, and none is named\nhint: name one of them: P1, P2, P3\n", await Decide(["--channel", channel, .. who])),
            ($"error: P1: there is no channel 'chek'\nhint: ", await Decide(["--recording", "P1", "--channel", "chek", .. who])),
            ("error: P1: there is no trial 999\nhint: its trials are 1 to ", await Decide(["--recording", "P1", "--trial", "999", .. who])),
            ("error: P1: neither a channel nor a trial is named\nhint: ", await Decide(["--recording", "P1", .. who])),
            ("error: --verdict: 'good' is not known\nhint: ", await Decide("--recording", "P1", "--trial", "1", "--verdict", "good", "--reason", "x", "--by", "R. Viewer")),
            ("error: channelaudit decide: --reason is missing\nhint: write --reason TEXT", await Decide("--recording", "P1", "--trial", "1", "--verdict", "pass", "--by", "R. Viewer")),
            ("error: channelaudit decide: --by is missing\nhint: write --by NAME", await Decide("--recording", "P1", "--trial", "1", "--verdict", "pass", "--reason", "x")),
            ("error: channelaudit decide: --withdraw and --verdict cannot be given together\nhint: ", await Decide(["--withdraw", "1", .. who])),
            ("error: channelaudit decide: --from and --trial cannot be given together\nhint: ", await Decide("--from", "x.tsv", "--trial", "1")),
            ("error: --trial: 'one' is no number\nhint: ", await Decide(["--recording", "P1", "--trial", "one", .. who])),
            ("error: --trial: '-1' is no number\nhint: ", await Decide(["--recording", "P1", "--trial=-1", .. who])),
            ("/decisions.jsonl: there is no decision 1\nhint: nothing has been decided here yet\n", await Decide("--withdraw", "1", "--reason", "x", "--by", "R. Viewer")),
            ("error: the reason holds U+001B as character 1, which is no text\nhint: ", await Decide("--recording", "P1", "--trial", "1", "--verdict", "pass", "--reason", "\u001b[2J", "--by", "R. Viewer")),
            ("not an audit: there is no audit.json of channelaudit in it\nhint: ", await CommandRun.Of("decide", _folder.In("study"))),
        ];

        Assert.All(runs, one => Assert.Contains(one.Expected, one.Run.Error, StringComparison.Ordinal));
        Assert.All(runs, one => Assert.Equal((ExitCode.Usage, string.Empty), (one.Run.Code, one.Run.Output)));
        Assert.All(runs, one => Assert.Equal(2, one.Run.Error.Split('\n').Length - 1));
        Assert.False(File.Exists(_folder.In("audit/decisions.jsonl")));
    }

    [Fact]
    public async Task APilotIsNotDecidedAbout()
    {
        await Screen("audit");
        _folder.Write("audit/" + PilotFiles.DoNext);

        CommandRun run = await Decide("--recording", "P1", "--trial", "1", "--verdict", "pass", "--reason", "x", "--by", "R. Viewer");

        Assert.StartsWith($"error: {Audit}: a pilot, not an audit\nhint: ", run.Error, StringComparison.Ordinal);
    }

    private static AuditEngine Engine() => new(new TerminalStyle());

    private Task<CommandRun> Screen(string folder, params string[] more) =>
        CommandRun.With(Engine(), CancellationToken.None, ["screen", _folder.In("study"), "--out", _folder.In(folder), .. more is [] ? new[] { "--figures", "none" } : more]);

    private async Task<CommandRun> Decide(params string[] words)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        using var context = new CommandContext(output, error, Engine()) { Clock = new Noon() };
        int code = await CommandLine.RunAsync(["decide", Audit, .. words], context, CancellationToken.None);
        return new CommandRun(code, output.ToString(), error.ToString());
    }

    private string[][] Cells(string table) => [.. File.ReadAllLines(_folder.In("audit/" + table)).Skip(1).Select(row => row.Split('\t'))];

    private Dictionary<string, string> Files(string folder) => Directory.GetFiles(_folder.In(folder), "*", SearchOption.AllDirectories)
        .Where(file => !string.Equals(Path.GetFileName(file), Ledger.LockName, StringComparison.Ordinal))
        .ToDictionary(file => Path.GetRelativePath(_folder.In(folder), file), file => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(file))), StringComparer.Ordinal);

    private sealed class Noon : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 3, 12, 12, 0, 0, TimeSpan.Zero);
    }
}
