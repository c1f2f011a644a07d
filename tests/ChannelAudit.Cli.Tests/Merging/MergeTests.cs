using ChannelAudit.Cli.Tests.Piloting;
using ChannelAudit.Cli.Tests.Screening;
using ChannelAudit.Synthesis;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Merging;

/// <summary>Shares of a run, audited apart and put together, are the audit that one machine would have written; nothing is left out in silence.</summary>
public sealed class MergeTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string _study;

    public MergeTests()
    {
        _study = _folder.In("study");
        Directory.CreateDirectory(_study);
        for (int number = 1; number <= 4; number++)
        {
            EdfFiles.Write(MadeRecording.Make(PilotFolder.Plan((ulong)number)), Path.Combine(_study, FormattableString.Invariant($"P{number}.edf")));
        }
    }

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(6)]
    public async Task SharesTogetherAreTheWholeRun(int of)
    {
        string setup = _folder.Write("setup.toml", "[[sites]]\nname = \"cheek\"\nchannel = \"EMG cheek\"\n");
        await Whole("whole", "--setup", setup);
        string[] shares = [];
        for (int number = of; number >= 1; number--)
        {
            (_, CommandRun run) = await Share(number, of, "--setup", setup);
            Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
            shares = [.. shares, Place(number)];
        }

        CommandRun merged = await Merge(shares);

        Assert.Equal(ExitCode.Done, merged.Code);
        Assert.Equal(Files("whole"), Files("merged"));
    }

    [Fact]
    public async Task PicturesAndLimitsOfTheSharesAreThoseOfTheAudit()
    {
        string[] more = ["--figures", "all", "--criteria", _folder.Write("lab.toml", "[line-noise]\nreject = [{ line_rms = 4 }]\n")];
        await Whole("whole", more);
        await Share(1, 2, more);
        await Share(2, 2, more);

        await Merge(Place(1), Place(2));

        Assert.Contains(Files("merged").Keys, name => name.EndsWith("channel-1-EMG%20cheek.png", StringComparison.Ordinal));
        Assert.Equal(Files("whole"), Files("merged"));
    }

    [Fact]
    public async Task WhatCannotBeReadIsInTheAuditToo()
    {
        await File.WriteAllTextAsync(Path.Combine(_study, "P2.edf"), "not a recording");
        CommandRun whole = await Whole("whole");
        (_, CommandRun share) = await Share(2, 4);
        foreach (int number in new[] { 1, 3, 4 })
        {
            await Share(number, 4);
        }

        CommandRun merged = await Merge(Place(1), Place(2), Place(3), Place(4));

        Assert.Equal((ExitCode.Unread, ExitCode.Unread, ExitCode.Unread), (whole.Code, share.Code, merged.Code));
        Assert.Equal(whole.Error, merged.Error);
        Assert.Equal(Files("whole"), Files("merged"));
    }

    [Fact]
    public async Task DecisionsInTheAuditsFolderStay()
    {
        await Whole("merged");
        await CommandRun.Of("decide", _folder.In("merged"), "--recording", "P1", "--channel", "EMG cheek", "--trial", "1", "--verdict", "pass", "--reason", "seen by eye", "--by", "R. Viewer");
        await Whole("whole");
        File.Copy(_folder.In("merged/decisions.jsonl"), _folder.In("whole/decisions.jsonl"));
        await Whole("whole");
        await Share(1, 2);
        await Share(2, 2);

        await Merge(Place(1), Place(2));

        Assert.Equal(Files("whole"), Files("merged"));
    }

    [Fact]
    public async Task AShareThatWasBrokenOffGoesOnAndIsNoneBefore()
    {
        await Whole("whole");
        using CancellationTokenSource source = new();
        CountingEngine broken = CountingEngine.EndingAt("P3", source);
        CommandRun first = await CommandRun.With(broken, source.Token, "screen", _study, "--out", Place(1), "--shard", "1/2", "--jobs", "1");
        await Share(2, 2);
        CommandRun early = await Merge(Place(1), Place(2));

        (CountingEngine rest, _) = await Share(1, 2);
        await Merge(Place(1), Place(2));

        Assert.Equal((ExitCode.Interrupted, "P1", "P3"), (first.Code, broken.Audited, rest.Audited));
        Assert.Equal((ExitCode.Usage, $"error: {Place(1)}: not a finished share\n"), (early.Code, FirstLine(early.Error)));
        Assert.Equal(Files("whole"), Files("merged"));
    }

    [Fact]
    public async Task OnlyWhatChangedIsAuditedAgain()
    {
        await Share(1, 2);
        await Share(2, 2);
        File.Copy(Path.Combine(_study, "P2.edf"), Path.Combine(_study, "P3.edf"), overwrite: true);
        (CountingEngine engine, _) = await Share(1, 2);
        await Whole("whole");

        await Merge(Place(1), Place(2));

        Assert.Equal("P3", engine.Audited);
        Assert.Equal(Files("whole"), Files("merged"));
    }

    [Fact]
    public async Task SharesThatAreNotAllAreRefused()
    {
        await Share(1, 3);
        await Share(2, 3);

        CommandRun two = await Merge(Place(1));
        CommandRun one = await Merge(Place(1), Place(2));
        CommandRun twice = await Merge(Place(1), Place(1));

        Assert.Equal("error: of 3 shares these are missing: 2, 3\n", FirstLine(two.Error));
        Assert.Equal("error: of 3 shares these are missing: 3\n", FirstLine(one.Error));
        Assert.Equal($"error: {Place(1)} and {Place(1)}: both are share 1/3\n", FirstLine(twice.Error));
        Assert.All([one, two, twice], run => Assert.Equal(ExitCode.Usage, run.Code));
        Assert.False(Directory.Exists(_folder.In("merged")));
    }

    [Fact]
    public async Task SharesOfOtherRunsAreRefused()
    {
        await Share(1, 2);
        await Share(2, 2, "--setup", _folder.Write("setup.toml", "[[sites]]\nname = \"cheek\"\nchannel = \"EMG cheek\"\n"));
        CommandRun setup = await Merge(Place(1), Place(2));
        await Share(2, 2);
        File.Delete(Path.Combine(_study, "P4.edf"));
        await Share(2, 2);
        CommandRun recordings = await Merge(Place(1), Place(2));

        Assert.Contains("setup, criteria, events or impedance readings are not the same files", setup.Error, StringComparison.Ordinal);
        Assert.Contains("the recordings found are not the same", recordings.Error, StringComparison.Ordinal);
        Assert.Equal((ExitCode.Usage, ExitCode.Usage), (setup.Code, recordings.Code));
    }

    [Fact]
    public async Task ADamagedShareIsRefusedAndTheAuditStays()
    {
        await Share(1, 2);
        await Share(2, 2);
        await Merge(Place(1), Place(2));
        File.Delete(_folder.In("merged/recordings/P2/result.json"));
        Dictionary<string, string> before = Files("merged");
        foreach (string name in new[] { "measures.tsv", "list.json", "result.json" })
        {
            string file = Path.Combine(Place(2), "recordings/P2", name);
            byte[] whole = await File.ReadAllBytesAsync(file);
            await File.AppendAllTextAsync(file, "x");

            CommandRun run = await Merge(Place(1), Place(2));

            Assert.Equal((ExitCode.Usage, $"error: {Place(2)}: recordings/P2 is not as the share was written\n"), (run.Code, FirstLine(run.Error)));
            Assert.Equal(before, Files("merged").Where(one => !one.Key.StartsWith(".unfinished", StringComparison.Ordinal)).ToDictionary(StringComparer.Ordinal));
            await File.WriteAllBytesAsync(file, whole);
        }
    }

    [Fact]
    public async Task AFolderOfSomethingElseIsRefused()
    {
        string other = _folder.Write("other/recordings/P1/notes.txt", "mine");
        CommandRun taken = await Whole("other", "--shard", "1/2");
        await Share(1, 2);
        CommandRun second = await Whole("share-1", "--shard", "2/2");

        Assert.Contains("neither empty nor a share: 'recordings/P1/notes.txt' is in it", taken.Error, StringComparison.Ordinal);
        Assert.Contains("share 1/2 stands there, 2/2 was asked for", second.Error, StringComparison.Ordinal);
        Assert.True(File.Exists(other));
    }

    [Theory]
    [InlineData("0/2")]
    [InlineData("3/2")]
    [InlineData("1")]
    [InlineData("1/2/3")]
    [InlineData("+1/2")]
    [InlineData("1/100001")]
    public async Task NoShareIsSaidToBeNone(string shard)
    {
        CommandRun run = await CommandRun.Of("screen", _study, "--shard", shard, "--out", Place(1));

        Assert.Equal((ExitCode.Usage, $"error: --shard: '{shard}' is not one of several shares\n"), (run.Code, FirstLine(run.Error)));
    }

    private static string FirstLine(string text) => text[..(text.IndexOf('\n', StringComparison.Ordinal) + 1)];

    private string Place(int number) => _folder.In(FormattableString.Invariant($"share-{number}"));

    private Task<CommandRun> Whole(string folder, params string[] more) =>
        CommandRun.With(new CountingEngine(), CancellationToken.None, ["screen", _study, "--out", _folder.In(folder), .. more]);

    private async Task<(CountingEngine Engine, CommandRun Run)> Share(int number, int of, params string[] more)
    {
        CountingEngine engine = new();
        return (engine, await CommandRun.With(
            engine, CancellationToken.None, ["screen", _study, "--out", Place(number), "--shard", FormattableString.Invariant($"{number}/{of}"), .. more]));
    }

    private Task<CommandRun> Merge(params string[] shares) => CommandRun.Of(["merge", .. shares, "--out", _folder.In("merged")]);

    private Dictionary<string, string> Files(string folder) => Directory.EnumerateFiles(_folder.In(folder), "*", SearchOption.AllDirectories)
        .Where(file => !file.EndsWith(".lock", StringComparison.Ordinal))
        .ToDictionary(file => Path.GetRelativePath(_folder.In(folder), file), file => Convert.ToHexString(File.ReadAllBytes(file)), StringComparer.Ordinal);
}
