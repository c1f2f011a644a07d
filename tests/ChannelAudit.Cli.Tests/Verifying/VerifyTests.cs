using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using ChannelAudit.Cli.Tests.Demo;
using ChannelAudit.Cli.Verifying;
using ChannelAudit.Reports.Verifying;
using ChannelAudit.Runs;
using Xunit;

namespace ChannelAudit.Cli.Tests.Verifying;

/// <summary><c>verify</c>: whatever is changed in an audit or its recordings is found and named, and nothing is where nothing was.</summary>
public sealed class VerifyTests
{
    [Fact]
    public async Task AnAuditThatNobodyTouchedIsTheSameAndStaysAsItIs()
    {
        using SmallStudy study = await SmallStudy.Make("--figures", "summary");
        string[] before = [.. study.State("audit"), .. study.State("study")];

        CommandRun drawn = await study.Verify("--data", study.Data);
        CommandRun above = await study.Verify("--data", study.In("."), "--no-pictures", "--jobs", "1");
        CommandRun alone = await study.Verify();

        Assert.All(new[] { drawn, above, alone }, run => Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error)));
        Assert.All(new[] { drawn, above, alone }, run => Assert.DoesNotContain("  differs", run.Output, StringComparison.Ordinal));
        Assert.Contains("criteria lab.toml, setup setup.toml, impedance ohm.tsv; limits: lab.toml, not frozen\n", drawn.Output, StringComparison.Ordinal);
        Assert.EndsWith("\nEverything that was checked is the same.\n", drawn.Output, StringComparison.Ordinal);
        Assert.Contains("not checked  pictures    --no-pictures\n", above.Output, StringComparison.Ordinal);
        Assert.Contains("not checked  recordings  no --data: no sample was looked at\n", alone.Output, StringComparison.Ordinal);
        Assert.Equal(before, [.. study.State("audit"), .. study.State("study")], StringComparer.Ordinal);
    }

    [Fact]
    public async Task TheFolderOfAPilotKeepsWhatItWasMadeWith()
    {
        using SmallStudy study = await SmallStudy.Make();
        CommandRun pilot = await DemoRun.Run(["pilot", study.In("study/b.csv"), "--out", study.In("pilot"), .. study.With]);

        CommandRun untouched = await DemoRun.Run("verify", study.In("pilot"));
        study.Change("pilot/audit.json", "[[sites]]", "[[Sites]]");
        CommandRun changed = await DemoRun.Run("verify", study.In("pilot"));

        Assert.Equal(ExitCode.Done, pilot.Code);
        Assert.Equal((ExitCode.Done, string.Empty), (untouched.Code, untouched.Error));
        Assert.Contains("criteria lab.toml, setup setup.toml, impedance ohm.tsv", untouched.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("  differs", untouched.Output, StringComparison.Ordinal);
        Assert.Contains("the text of setup setup.toml does not have the SHA-256 that stands beside it", changed.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task OneChangedSampleIsFoundEvenUnderAChangedHash()
    {
        using SmallStudy study = await SmallStudy.Make();
        string then = Hash(study.In("study/b.csv"));
        study.Change("study/b.csv", "0.098,-1", "0.098,-3");
        string now = Hash(study.In("study/b.csv"));

        CommandRun open = await study.Verify("--data", study.Data, "--no-pictures");
        foreach (string file in new[] { "audit.json", "recordings/b/result.json" })
        {
            study.Change("audit/" + file, then, now);
        }

        study.Cover("recordings/b/result.json");
        CommandRun covered = await study.Verify("--data", study.Data, "--no-pictures");

        Assert.Equal((ExitCode.Reached, ExitCode.Reached), (open.Code, covered.Code));
        Assert.Contains($"differs      recordings  b.csv has other bytes than were audited (SHA-256 {now[..8]} instead of {then[..8]})", open.Output, StringComparison.Ordinal);
        Assert.Contains("ok           files", covered.Output, StringComparison.Ordinal);
        Assert.Contains("ok           recordings", covered.Output, StringComparison.Ordinal);
        Assert.All(new[] { open, covered }, run => Assert.Matches("First difference: channels\\.tsv, line 2, column [a-z_]+ \\(b, cheek, [a-z]+\\)\n  there: [-0-9.]+\n  again: [-0-9.]+\n", run.Output));
    }

    [Theory]
    [InlineData("verdicts.tsv", "reject", "pass", "column verdict (b, cheek, 1)")]
    [InlineData("conditions.tsv", "look", "book", "column condition (b, n/a, cheek)")]
    [InlineData("recordings/b/measures.tsv", "line_rms\t2", "line_rms\t3", "line 2, column value (cheek, 1, line_rms)")]
    [InlineData("recordings/b/result.json", "\"line_rms\",\"value\":2", "\"line_rms\",\"value\":3", "value")]
    public async Task OneChangedWordOrDigitIsNamedWithAndWithoutData(string file, string from, string to, string place)
    {
        using SmallStudy study = await SmallStudy.Make();
        study.Change("audit/" + file, from, to);

        CommandRun open = await study.Verify();
        study.Cover(file);
        CommandRun covered = await study.Verify("--data", study.Data, "--no-pictures");

        Assert.Equal((ExitCode.Reached, ExitCode.Reached), (open.Code, covered.Code));
        Assert.Contains($"differs      files       {file} has other bytes than audit.json lists\n", open.Output, StringComparison.Ordinal);
        Assert.Contains($"First difference: {file}, ", covered.Output, StringComparison.Ordinal);
        Assert.Contains(place, covered.Output, StringComparison.Ordinal);
        Assert.Contains("Files that differ (2): " + file + ", audit.json\n", covered.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task OneChangedLimitIsNamed()
    {
        using SmallStudy study = await SmallStudy.Make();
        study.Change("audit/audit.json", "\"reject\":[{\"clipped\":1}", "\"reject\":[{\"clipped\":2}");

        CommandRun run = await study.Verify("--data", study.Data, "--no-pictures");

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Contains("the limits in audit.json do not have the SHA-256 that stands beside them", run.Output, StringComparison.Ordinal);
        Assert.Contains("[clipping] reject: [{ clipped = 1.0 }, { clipped_run = 10.0 }] -> [{ clipped = 2.0 }, { clipped_run = 10.0 }] (lab.toml -> audit.json)", run.Output, StringComparison.Ordinal);
        Assert.Matches("First difference: audit\\.json, line [0-9]+, criteria\\.limits\\[3\\]\\.reject\\[0\\]\\.clipped\n  there: 2\n  again: 1\n", run.Output);
    }

    [Fact]
    public async Task ALimitChangedInTheCriteriaThemselvesIsFoundUnderACoveredHash()
    {
        using SmallStudy study = await SmallStudy.Make();
        ChangeInput(study, "criteria", text => text + "[line-noise]\nreject = []\nchannel_reject = []\n", withHash: false);
        CommandRun open = await study.Verify("--data", study.Data, "--no-pictures");
        ChangeInput(study, "criteria", text => text, withHash: true);
        CommandRun covered = await study.Verify("--data", study.Data, "--no-pictures");

        Assert.Equal((ExitCode.Reached, ExitCode.Reached), (open.Code, covered.Code));
        Assert.Contains("the text of criteria lab.toml does not have the SHA-256 that stands beside it", open.Output, StringComparison.Ordinal);
        Assert.Contains("limits: [line-noise] reject: [] -> [{ line_rms = 5.0, line_ratio = 0.0 }] (lab.toml -> audit.json)", covered.Output, StringComparison.Ordinal);
        Assert.Contains("First difference: verdicts.tsv, line 2, column verdict (b, cheek, 1)\n  there: reject\n  again: questionable\n", covered.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AChangedSetupIsFound()
    {
        using SmallStudy study = await SmallStudy.Make();
        ChangeInput(study, "setup", text => text.Replace("brow", "eye", StringComparison.Ordinal), withHash: true);

        CommandRun run = await study.Verify("--data", study.Data, "--no-pictures");

        Assert.Contains("setup: the file in inputs is not the one that audit.json names", run.Output, StringComparison.Ordinal);
        Assert.Matches("First difference: verdicts\\.tsv, line [0-9]+, column channel \\(b\\)\n  there: brow\n  again: eye\n", run.Output);
    }

    [Fact]
    public async Task MissingAndUnreadableRecordingsEndWith3AndTheRestIsChecked()
    {
        using SmallStudy study = await SmallStudy.Make();
        File.Delete(study.In("study/sub/a.csv"));
        CommandRun missing = await study.Verify("--data", study.Data, "--no-pictures");
        study.Write("study/sub/a.csv", "not a recording\n");
        CommandRun damaged = await study.Verify("--data", study.Data, "--no-pictures");

        Assert.Equal((ExitCode.Unread, ExitCode.Unread), (missing.Code, damaged.Code));
        Assert.Contains("sub/a.csv is not below", missing.Output, StringComparison.Ordinal);
        Assert.Contains("ok           made again  from the recordings: 4 files the same, byte for byte\n", missing.Output, StringComparison.Ordinal);
        Assert.Contains("not checked  whole run   tables over all recordings need all of them\n", missing.Output, StringComparison.Ordinal);
        Assert.Contains("differs      readable    a.csv", damaged.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task MissingAndForeignFilesAreNamed()
    {
        using SmallStudy study = await SmallStudy.Make();
        File.Delete(study.In("audit/conditions.tsv"));
        study.Write("audit/notes.txt", "mine");

        CommandRun run = await study.Verify();

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Contains("differs      files        conditions.tsv is missing\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("not checked  other files  no part of the audit: notes.txt\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task EventsGivenByNameAndOnesBesideARecordingAreFollowed()
    {
        using SmallStudy study = await SmallStudy.Make();
        string events = study.Write("marks.tsv", "onset\tduration\ttrial_type\n1\t2\tlook\n");
        string alone = study.In("alone");
        CommandRun made = await DemoRun.Run("screen", study.In("study/b.csv"), "--events", events, "--figures", "none", "--out", alone);
        File.Delete(events);

        CommandRun byName = await DemoRun.Run("verify", alone, "--data", study.In("study/b.csv"));
        study.Change("study/b_events.tsv", "look", "book");
        CommandRun beside = await study.Verify("--data", study.Data, "--no-pictures");

        Assert.Equal((ExitCode.Done, ExitCode.Done, ExitCode.Reached), (made.Code, byName.Code, beside.Code));
        Assert.Contains("inputs      events marks.tsv; limits: the defaults, not frozen\n", byName.Output, StringComparison.Ordinal);
        Assert.Contains("First difference: verdicts.tsv, line 2, column condition (b, cheek, 1)\n  there: look\n  again: book\n", beside.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task DecisionsAreReplayedAndOneChangedLineOfTheLedgerIsNamed()
    {
        using SmallStudy study = await SmallStudy.Make("--figures", "summary");
        await study.Decide("--channel", "cheek", "--trial", "1", "--verdict", "pass");
        await study.Decide("--channel", "brow", "--trial", "2", "--verdict", "reject");
        CommandRun whole = await study.Verify("--data", study.Data, "--no-pictures");
        CommandRun results = await study.Verify();
        study.Change("audit/decisions.jsonl", "\"verdict\":\"pass\"", "\"verdict\":\"reject\"");
        CommandRun changed = await study.Verify("--data", study.Data, "--no-pictures");

        Assert.Equal((ExitCode.Done, ExitCode.Done, ExitCode.Reached), (whole.Code, results.Code, changed.Code));
        Assert.Contains("ok           decisions   2 lines of the ledger, each chained to the one before", whole.Output, StringComparison.Ordinal);
        Assert.Contains("ok           inputs      criteria lab.toml", whole.Output, StringComparison.Ordinal);
        Assert.Matches("differs      decisions   [^\n]*decisions\\.jsonl, line 1: changed since it was written", changed.Output);
        Assert.Contains("ok           made again  from the recordings: 6 files the same, byte for byte\n", changed.Output, StringComparison.Ordinal);
        Assert.Contains("not checked  final", changed.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TablesBehindTheLedgerAreNamedWithTheWayOn()
    {
        using SmallStudy study = await SmallStudy.Make();
        study.DecideBehindItsTables();

        CommandRun behind = await study.Verify();
        CommandRun export = await DemoRun.Run("export", "bundle", study.Audit, "--data", study.Data, "--to", study.In("a.zip"));
        CommandRun reconcile = await DemoRun.Run("reconcile", study.Audit, study.Write("list.tsv", "recording\tchannel\ttrial\nb\tcheek\tn/a\n"));
        CommandRun raters = await DemoRun.Run("raters", study.Audit, study.Write("labels.tsv", "recording\tchannel\ttrial\trater\tlabel\nb\tcheek\t1\tA\treject\n"));
        CommandRun brought = await DemoRun.Run("decide", study.Audit);
        CommandRun after = await study.Verify();

        Assert.Equal((ExitCode.Reached, ExitCode.Usage), (behind.Code, export.Code));
        Assert.Contains(
            "differs      decisions   1 line of the ledger came after tables and pages were made, which differ for that reason; channelaudit decide DIR brings them up to date, then verify again\n",
            behind.Output,
            StringComparison.Ordinal);
        Assert.Equal($"error: {study.Audit}: decisions were added since its tables and pages were made\nhint: channelaudit decide DIR brings them up to date; then export again\n", export.Error);
        Assert.False(File.Exists(study.In("a.zip")));
        Assert.All(new[] { reconcile, raters }, run => Assert.Contains($"channelaudit decide {study.Audit} brings them up to date", run.Error, StringComparison.Ordinal));
        Assert.Equal((ExitCode.Done, ExitCode.Done), (brought.Code, after.Code));
    }

    [Fact]
    public async Task ALedgerThatIsGoneOrCutIsNamed()
    {
        using SmallStudy study = await SmallStudy.Make();
        await study.Decide("--channel", "cheek", "--trial", "1", "--verdict", "pass");
        File.Delete(study.In("audit/decisions.jsonl"));

        CommandRun run = await study.Verify();

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Contains("0 lines, but audit.json was written from 1", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AnotherVersionIsSaidFirst()
    {
        using SmallStudy study = await SmallStudy.Make();
        study.Change("audit/audit.json", "\"version\": \"0.1.0\"", "\"version\": \"0.0.9\"");

        CommandRun run = await study.Verify("--data", study.Data, "--no-pictures");

        Assert.StartsWith($"{study.Audit}: made by channelaudit 0.0.9, checked by 0.1.0: results may differ for that reason alone", run.Output, StringComparison.Ordinal);
        Assert.Matches("ok           made again  from the recordings: [0-9]+ files the same, byte for byte\n", run.Output);
    }

    [Fact]
    public async Task WhatIsNoAuditOrNoDataIsOneErrorAndOneHint()
    {
        using SmallStudy study = await SmallStudy.Make();
        CommandRun[] runs =
        [
            await DemoRun.Run("verify", study.Data),
            await study.Verify("--data", study.In("nowhere")),
            await study.Verify("--jobs", "0"),
            await DemoRun.Run("verify"),
        ];

        Assert.All(runs, run => Assert.Equal((ExitCode.Usage, string.Empty), (run.Code, run.Output)));
        Assert.All(runs, run => Assert.Matches("^error: [^\n]+\nhint: [^\n]+\n$", run.Error));
    }

    [Fact]
    public void TheScratchFolderGoesAndIsNeverInsideWhatIsChecked()
    {
        string path;
        using (ScratchFolder scratch = ScratchFolder.Outside(null, Path.Combine(Path.GetTempPath(), "elsewhere")))
        {
            path = scratch.FolderPath;
            File.WriteAllText(scratch.In("x"), "x");
        }

        Assert.False(Path.Exists(path));
        Assert.Contains("TMPDIR", Assert.Throws<ChannelAuditException>(() => ScratchFolder.Outside(Path.GetTempPath())).Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void AScratchFolderThatCannotBeWrittenSaysNothingOfTheAudit()
    {
        using ScratchFolder scratch = ScratchFolder.Outside();
        string file = scratch.In("again");
        File.WriteAllText(file, "a file where a folder should be");
        File.WriteAllText(scratch.In("inputs"), "another");

        ChannelAuditException put = Assert.Throws<ChannelAuditException>(() => scratch.Put(new RunInput(RunInput.Setup, "setup.toml", [])));
        ChannelAuditException copied = Assert.Throws<ChannelAuditException>(() => scratch.Copy(file, Path.Combine(file, "copy")));

        Assert.True(scratch.IsRefused);
        Assert.All(new[] { put, copied }, fault => Assert.StartsWith("the system's temporary folder cannot be written: ", fault.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void JsonIsComparedByPath()
    {
        FileDifference found = FileComparison.Of("x.json", """{"a": [{"b": 1}, {"b": 2, "c": "x"}]}"""u8.ToArray(), """{"a": [{"b": 1}, {"b": 2, "c": "y"}]}"""u8.ToArray())!;

        Assert.Equal(new FileDifference("x.json", "line 1, a[1].c", "x", "y"), found);
        Assert.Null(FileComparison.Of("x.json", "1"u8.ToArray(), "1"u8.ToArray()));
        Assert.Equal("(nothing)", FileComparison.Of("x.tsv", "a\tb\n1\t2\n"u8.ToArray(), "a\tb\n1\t2\n3\t4\n"u8.ToArray())!.There is "" ? "(nothing)" : "line");
    }

    private static string Hash(string file) => Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(file)));

    private static void ChangeInput(SmallStudy study, string role, Func<string, string> change, bool withHash)
    {
        string path = study.In("audit/audit.json");
        JsonNode audit = JsonNode.Parse(File.ReadAllText(path))!;
        JsonObject input = audit["inputs"]!.AsArray().Select(node => node!.AsObject()).Single(node => string.Equals((string?)node["role"], role, StringComparison.Ordinal));
        string text = change((string)input["text"]!);
        input["text"] = text;
        if (withHash)
        {
            input["sha256"] = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
        }

        File.WriteAllText(path, audit.ToJsonString(new JsonSerializerOptions { WriteIndented = true }));
    }
}
