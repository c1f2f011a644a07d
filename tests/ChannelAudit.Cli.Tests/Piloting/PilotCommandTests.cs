using ChannelAudit.Cli.Screening;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Piloting;

public sealed class PilotCommandTests : IDisposable
{
    private static readonly string[] Written =
        ["attempts.json", "audit.json", "channels.tsv", "conditions.tsv", "do-next.txt", "report.html", "verdicts.tsv"];

    private readonly PilotFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task ACleanSetUpSaysOnlyStart()
    {
        CommandRun run = await Pilot(_folder.Record("P1.edf", PilotFolder.Plan(1)));

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.StartsWith("P1: START\n", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Do next", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Not checked", run.Output, StringComparison.Ordinal);
        Assert.Equal("P1: START\n", _folder.Read("do-next.txt"));
        Assert.Equal(Written, Directory.EnumerateFiles(_folder.Out).Select(Path.GetFileName).Order(StringComparer.Ordinal).ToArray());
    }

    [Fact]
    public async Task TheScreenOfABridgeIsAsKept()
    {
        string file = _folder.Record("P2.edf", PilotFolder.Bridged(2));
        string readings = _folder.Write(
            "readings.tsv",
            "site\tpair\tkohm\ttime\tphase\ncheek\ta-b\t4.1\t10:00\tbefore\ncheek\ta-ground\t3.9\t10:00\tbefore\ncheek\tb-ground\t4.2\t10:00\tbefore\n"
                + "brow\ta-b\t24\t10:01\tbefore\nbrow\ta-ground\t13\t10:01\tbefore\nbrow\tb-ground\t14\t10:01\tbefore\n");
        CommandRun run = await Pilot(file, "--impedance", readings);

        Golden.Match("ChannelAudit.Cli.Tests/Golden/pilot.txt", run.Output.Replace(_folder.Out, "OUT", StringComparison.Ordinal));
        Golden.Match("ChannelAudit.Cli.Tests/Golden/pilot-do-next.txt", _folder.Read("do-next.txt"));
    }

    [Fact]
    public async Task ARedoIntoTheSameFolderSaysWhatChangedAndKeepsBoth()
    {
        await Pilot(_folder.Record("P3-1.edf", PilotFolder.Bridged(3)), "--start-because", "he leaves at noon");
        CommandRun second = await Pilot(_folder.Record("P3-2.edf", PilotFolder.Plan(4)));

        Assert.StartsWith("P3-2, attempt 2: START\n  since then: cheek: reject to pass\n", second.Output, StringComparison.Ordinal);
        Assert.Contains("cheek and eye: bridge gone", second.Output, StringComparison.Ordinal);
        Assert.Contains("\"started_because\":\"he leaves at noon\"", _folder.Read("attempts.json"), StringComparison.Ordinal);
        Assert.Contains("\"number\":2", _folder.Read("attempts.json"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task AttemptsOutliveALaterAuditOfTheFolder()
    {
        string file = _folder.Record("P4.edf", PilotFolder.Plan(5));
        await Pilot(file);
        await CommandRun.With(new AuditEngine(new()), CancellationToken.None, "screen", file, "--figures", "none", "--out", _folder.Out);

        Assert.False(File.Exists(Path.Combine(_folder.Out, "do-next.txt")));
        Assert.True(File.Exists(Path.Combine(_folder.Out, "attempts.json")));
    }

    [Fact]
    public async Task AnAuditOfScreenIsNotReplaced()
    {
        string file = _folder.Record("P10.edf", PilotFolder.Plan(11));
        await CommandRun.With(new AuditEngine(new()), CancellationToken.None, "screen", file, "--figures", "none", "--out", _folder.Out);
        CommandRun run = await Pilot(file);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("holds an audit of screen, which a pilot would replace\n", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhyASessionWasStartedIsNotAskedWhereTheAnswerIsStart()
    {
        await Pilot(_folder.Record("P11.edf", PilotFolder.Plan(12)), "--start-because", "no reason needed");

        Assert.Contains("\"started_because\":null", _folder.Read("attempts.json"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task TheSameInputGivesTheSameBytes()
    {
        string file = _folder.Record("P5.edf", PilotFolder.Bridged(6));
        CommandRun first = await Pilot(file);
        string attempts = _folder.Read("attempts.json"), list = _folder.Read("do-next.txt"), audit = _folder.Read("audit.json");
        CommandRun again = await Pilot(file);

        Assert.Equal(first.Output, again.Output);
        Assert.Equal((attempts, list, audit), (_folder.Read("attempts.json"), _folder.Read("do-next.txt"), _folder.Read("audit.json")));
    }

    [Fact]
    public async Task TheProtocolIsAsKept()
    {
        _folder.Record("P6.edf", PilotFolder.Plan(7));
        CommandRun run = await CommandRun.Of("pilot", "--protocol", "--setup", _folder.Setup);

        Golden.Match("ChannelAudit.Cli.Tests/Golden/pilot-protocol.txt", run.Output.Replace(_folder.Setup, "setup.toml", StringComparison.Ordinal));
        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
    }

    [Fact]
    public async Task AnAttemptsFileOfSomebodyElseIsRefusedAndLeft()
    {
        string file = _folder.Record("P7.edf", PilotFolder.Plan(8));
        await Pilot(file);
        string path = Path.Combine(_folder.Out, "attempts.json");
        await File.WriteAllTextAsync(path, "{}");
        CommandRun run = await Pilot(file);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith("error: attempts.json, format: ", run.Error, StringComparison.Ordinal);
        Assert.Equal("{}", await File.ReadAllTextAsync(path));
    }

    [Theory]
    [InlineData("error: pilot: there is no file none.edf\nhint: give the path of a file that exists\n", "none.edf")]
    [InlineData("error: channelaudit pilot: --protocol needs --setup, which names sites and tasks\nhint: write --setup FILE; channelaudit setup new RECORDING writes one to fill in\n", "--protocol")]
    [InlineData("error: channelaudit pilot: --protocol and RECORDING cannot be given together\nhint: run it once for each\n", "x.edf", "--protocol", "--setup", "s.toml")]
    public async Task WrongUseEndsWith2(string error, params string[] words)
    {
        CommandRun run = await CommandRun.Of(["pilot", .. words]);

        Assert.Equal((ExitCode.Usage, error, string.Empty), (run.Code, run.Error, run.Output));
    }

    [Fact]
    public async Task ASiteThatIsNotInTheFileEndsWith2()
    {
        string file = _folder.Record("P8.edf", PilotFolder.Plan(9));
        await File.WriteAllTextAsync(_folder.Setup, "[[sites]]\nname = \"chin\"\nchannel = \"EMG chin\"\n");
        CommandRun run = await Pilot(file);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith("error: setup.toml, site 'chin': channel 'EMG chin' is not in P8.edf\n", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ARecordingThatCannotBeReadEndsWith3()
    {
        _folder.Record("P9.edf", PilotFolder.Plan(10));
        CommandRun run = await Pilot(_folder.Write("torn.edf", "0       "));

        Assert.Equal(ExitCode.Unread, run.Code);
        Assert.False(Directory.Exists(_folder.Out));
    }

    private Task<CommandRun> Pilot(string file, params string[] more) =>
        CommandRun.Of(["pilot", file, "--setup", _folder.Setup, "--out", _folder.Out, "--no-picture", .. more]);
}
