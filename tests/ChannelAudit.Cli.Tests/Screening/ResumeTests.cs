using ChannelAudit.Cli.Tests.Piloting;
using ChannelAudit.Reports.Output;
using ChannelAudit.Synthesis;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Screening;

/// <summary>A recording is audited again only when something that its result depends on has changed, and what comes of it are the bytes of a fresh run.</summary>
public sealed class ResumeTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string _study;

    public ResumeTests()
    {
        _study = _folder.In("study");
        Directory.CreateDirectory(_study);
        for (int number = 1; number <= 3; number++)
        {
            EdfFiles.Write(MadeRecording.Make(PilotFolder.Plan((ulong)number)), Path.Combine(_study, FormattableString.Invariant($"P{number}.edf")));
        }
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task ASecondRunAuditsNothingAndPrintsTheSame()
    {
        (CountingEngine first, CommandRun one) = await Screen("out");
        (CountingEngine second, CommandRun two) = await Screen("out");

        Assert.Equal(("P1 P2 P3", string.Empty), (first.Audited, second.Audited));
        Assert.Equal(one.Output.Replace("Written to", "Nothing has changed since it was written to", StringComparison.Ordinal).Replace("\n", " ", StringComparison.Ordinal), two.Output.Replace("\n", " ", StringComparison.Ordinal));
        Assert.False(Directory.Exists(_folder.In("out/.unfinished")));
    }

    [Fact]
    public async Task OnlyWhatChangedIsAuditedAgain()
    {
        await Screen("out");
        ChangeOneSample("study/P2.edf");
        (CountingEngine recording, _) = await Screen("out");
        _folder.Write("study/P3_events.tsv", "onset\tduration\ttrial_type\n1\t3\trest\n");
        (CountingEngine events, _) = await Screen("out");
        string lab = _folder.Write("lab.toml", "[line-noise]\nreject = [{ line_rms = 4 }]\n");
        (CountingEngine criteria, _) = await Screen("out", "--criteria", lab);
        await Screen("fresh", "--criteria", lab);

        Assert.Equal(("P2", "P3", "P1 P2 P3"), (recording.Audited, events.Audited, criteria.Audited));
        AssertSame("fresh", "out");
    }

    [Fact]
    public async Task WhatWasChangedByHandIsMadeAnew()
    {
        await Screen("fresh");
        await Screen("out");
        await File.AppendAllTextAsync(_folder.In("out/verdicts.tsv"), "P9\tcheek\n");
        (CountingEngine table, _) = await Screen("out");
        string stored = _folder.In("out/recordings/P1/result.json");
        await File.WriteAllTextAsync(stored, (await File.ReadAllTextAsync(stored)).Replace("pass", "reject", StringComparison.Ordinal));
        (CountingEngine result, _) = await Screen("out");
        File.Delete(_folder.In("out/recordings/P3/session-ribbon.png"));
        (CountingEngine picture, _) = await Screen("out");

        Assert.Equal((string.Empty, "P1", "P3"), (table.Audited, result.Audited, picture.Audited));
        AssertSame("fresh", "out");
    }

    [Fact]
    public async Task AnInterruptedRunLeavesTheEarlierAuditAndGoesOnLater()
    {
        await Screen("out", "--figures", "none");
        Dictionary<string, string> before = Files("out");
        using CancellationTokenSource source = new();
        CountingEngine broken = CountingEngine.EndingAt("P3", source);

        CommandRun run = await CommandRun.With(broken, source.Token, "screen", _study, "--out", _folder.In("out"), "--jobs", "1");
        Dictionary<string, string> after = Files("out");
        (CountingEngine rest, _) = await Screen("out");
        await Screen("fresh");

        Assert.Equal((ExitCode.Interrupted, "P1 P2"), (run.Code, broken.Audited));
        Assert.Equal(before, after.Where(file => !file.Key.StartsWith(".unfinished", StringComparison.Ordinal)).ToDictionary(StringComparer.Ordinal));
        Assert.Equal("P3", rest.Audited);
        AssertSame("fresh", "out");
    }

    [Fact]
    public async Task AnInterruptedFirstRunGoesOnLater()
    {
        using CancellationTokenSource source = new();

        await CommandRun.With(CountingEngine.EndingAt("P2", source), source.Token, "screen", _study, "--out", _folder.In("out"), "--jobs", "1");
        (CountingEngine rest, CommandRun run) = await Screen("out");
        await Screen("fresh");

        Assert.Equal((ExitCode.Done, "P2 P3"), (run.Code, rest.Audited));
        AssertSame("fresh", "out");
    }

    [Fact]
    public async Task ThreadsChangeNothing()
    {
        await Screen("one", "--jobs", "1", "--figures", "all");
        await Screen("three", "--jobs", "3", "--figures", "all");

        AssertSame("one", "three");
    }

    [Fact]
    public async Task ASecondRunAtTheSameTimeIsRefused()
    {
        await Screen("out");
        Dictionary<string, string> before = Files("out");
        using (AuditFolder.Open(_folder.In("out")))
        {
            (_, CommandRun run) = await Screen("out");

            Assert.Equal((ExitCode.Usage, $"error: {_folder.In("out")}: another run is writing there\nhint: wait for its end, or give another folder with --out\n"), (run.Code, run.Error));
        }

        Assert.Equal(before, Files("out"));
    }

    [Fact]
    public async Task WhatIsNoLongerThereIsSaidToBeLeftOut()
    {
        await Screen("out");
        File.Delete(_folder.In("study/P1.edf"));

        (CountingEngine engine, CommandRun run) = await Screen("out");

        Assert.Equal(string.Empty, engine.Audited);
        Assert.Contains("was also over P1: not in this run, so no longer in it", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_folder.In("out/recordings/P1")));
    }

    private async Task<(CountingEngine Engine, CommandRun Run)> Screen(string folder, params string[] more)
    {
        CountingEngine engine = new();
        return (engine, await CommandRun.With(engine, CancellationToken.None, ["screen", _study, "--out", _folder.In(folder), .. more]));
    }

    private void ChangeOneSample(string file)
    {
        byte[] bytes = File.ReadAllBytes(_folder.In(file));
        bytes[^1001] ^= 1;
        File.WriteAllBytes(_folder.In(file), bytes);
    }

    private void AssertSame(string one, string other) => Assert.Equal(Files(one), Files(other));

    private Dictionary<string, string> Files(string folder) => Directory.EnumerateFiles(_folder.In(folder), "*", SearchOption.AllDirectories)
        .Where(file => !file.EndsWith("/lock", StringComparison.Ordinal))
        .ToDictionary(file => Path.GetRelativePath(_folder.In(folder), file), file => Convert.ToHexString(File.ReadAllBytes(file)), StringComparer.Ordinal);
}
