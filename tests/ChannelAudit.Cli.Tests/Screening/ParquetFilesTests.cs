using ChannelAudit.Cli.Tests.Piloting;
using ChannelAudit.Cli.Tests.Verifying;
using ChannelAudit.Synthesis;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Screening;

/// <summary><c>--parquet</c>: the files are there when they were asked for, agree with the tables after whatever comes, and are the same bytes however they were made.</summary>
public sealed class ParquetFilesTests : IDisposable
{
    private static readonly string[] Names = ["measures.parquet", "pairs.parquet", "verdicts.parquet"];

    private readonly TemporaryFolder _folder = new();
    private readonly string _study;

    public ParquetFilesTests()
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
    public async Task TheyComeWithTheOptionAndGoWithoutIt()
    {
        (CountingEngine first, _) = await Screen("out");
        string[] without = Found("out");
        (CountingEngine second, CommandRun added) = await Screen("out", "--parquet");
        string[] with = Found("out");
        (CountingEngine third, CommandRun again) = await Screen("out", "--parquet");
        (CountingEngine fourth, _) = await Screen("out");

        Assert.Equal(("P1 P2 P3", string.Empty, string.Empty, string.Empty), (first.Audited, second.Audited, third.Audited, fourth.Audited));
        Assert.Empty(without);
        Assert.Equal(Names, with);
        Assert.Contains("Written to", added.Output, StringComparison.Ordinal);
        Assert.Contains("Nothing has changed", again.Output, StringComparison.Ordinal);
        Assert.Empty(Found("out"));
    }

    [Fact]
    public async Task OneMachineSeveralThreadsTakenOverOrMergedTheyAreTheSameBytes()
    {
        await Screen("one", "--parquet", "--jobs", "1");
        await Screen("three", "--parquet", "--jobs", "3");
        await Screen("over");
        await Screen("over", "--parquet");
        await Screen("share-1", "--shard", "1/2");
        await Screen("share-2", "--shard", "2/2");
        CommandRun merged = await CommandRun.Of("merge", _folder.In("share-2"), _folder.In("share-1"), "--parquet", "--out", _folder.In("merged"));
        await CommandRun.Of("merge", _folder.In("share-2"), _folder.In("share-1"), "--out", _folder.In("plain"));

        Assert.Equal(ExitCode.Done, merged.Code);
        Assert.Equal(Names, Found("one"));
        Assert.All(new[] { "three", "over", "merged" }, folder => Assert.Equal(Bytes("one"), Bytes(folder)));
        Assert.Empty(Found("plain"));
    }

    [Fact]
    public async Task AShareIsNoWhole()
    {
        (CountingEngine engine, CommandRun run) = await Screen("share", "--shard", "1/2", "--parquet");

        Assert.Equal(
            "error: channelaudit screen: --parquet is of a whole run, and --shard asks for a part\nhint: leave --parquet out here, and give it to channelaudit merge\n", run.Error);
        Assert.Equal((ExitCode.Usage, string.Empty), (run.Code, engine.Audited));
        Assert.False(Directory.Exists(_folder.In("share")));
    }

    [Fact]
    public async Task TheyFollowWhatChanged()
    {
        await Screen("out", "--parquet");
        File.Delete(Path.Combine(_study, "P2.edf"));
        string lab = _folder.Write("lab.toml", "[line-noise]\nreject = [{ line_rms = 4 }]\n");
        await Screen("out", "--parquet", "--criteria", lab);
        await Screen("fresh", "--parquet", "--criteria", lab);

        Assert.Equal(Bytes("fresh"), Bytes("out"));
    }

    [SkippableFact]
    public async Task DecisionsChangeThemWithTheTables()
    {
        ParquetContent.SkipWithoutReader();
        using SmallStudy study = await SmallStudy.Make("--figures", "none", "--parquet");
        string[] before = [.. Finals(study)];
        await study.Decide("--channel", "cheek", "--trial", "1", "--verdict", "pass");

        string[] table = [.. (await File.ReadAllLinesAsync(study.In("audit/verdicts.tsv"))).Skip(1).Select(line => line.Split('\t')[^1])];
        CommandRun checkedRun = await study.Verify("--data", study.Data);

        Assert.NotEqual(before, Finals(study), StringComparer.Ordinal);
        Assert.Equal(table, Finals(study), StringComparer.Ordinal);
        Assert.Equal((ExitCode.Done, string.Empty), (checkedRun.Code, checkedRun.Error));
        Assert.DoesNotContain("  differs", checkedRun.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task VerifyMakesThemAgain()
    {
        using SmallStudy study = await SmallStudy.Make("--figures", "none", "--parquet");
        CommandRun untouched = await study.Verify();
        string file = study.In("audit/measures.parquet");
        byte[] bytes = await File.ReadAllBytesAsync(file);
        bytes[bytes.Length / 2] ^= 1;
        await File.WriteAllBytesAsync(file, bytes);
        study.Cover("measures.parquet");

        CommandRun changed = await study.Verify();

        Assert.Equal((ExitCode.Done, ExitCode.Reached), (untouched.Code, changed.Code));
        Assert.Contains("First difference: measures.parquet", changed.Output, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Finals(SmallStudy study) => ParquetContent.Read(study.In("audit/verdicts.parquet")).Cells("final").Select(cell => cell.GetString()!);

    private async Task<(CountingEngine Engine, CommandRun Run)> Screen(string folder, params string[] more)
    {
        CountingEngine engine = new();
        return (engine, await CommandRun.With(engine, CancellationToken.None, ["screen", _study, "--figures", "none", "--out", _folder.In(folder), .. more]));
    }

    private string[] Found(string folder) =>
        [.. Directory.EnumerateFiles(_folder.In(folder), "*.parquet", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(_folder.In(folder), file)).Order(StringComparer.Ordinal)];

    private string[] Bytes(string folder) => [.. Names.Select(name => Convert.ToHexString(File.ReadAllBytes(_folder.In(Path.Combine(folder, name)))))];
}
