using System.Globalization;
using System.Text.RegularExpressions;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Segments;
using ChannelAudit.Synthesis;
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
    public async Task AnAuditOfScreenThatCameAfterAPilotIsNotReplacedEither()
    {
        string file = _folder.Record("P12.edf", PilotFolder.Plan(13));
        await Pilot(file);
        await CommandRun.With(new AuditEngine(new()), CancellationToken.None, "screen", file, "--figures", "none", "--out", _folder.Out);
        CommandRun run = await Pilot(file);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("holds an audit of screen", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AnotherParticipantStartsASeriesOfItsOwnAndNothingIsLost()
    {
        await Pilot(_folder.Record("P13.edf", PilotFolder.Bridged(14)));
        CommandRun other = await Pilot(_folder.Record("P14.edf", PilotFolder.Plan(15)));
        CommandRun again = await Pilot(_folder.Record("P13-2.edf", PilotFolder.Plan(16)));

        Assert.StartsWith("P14: START\n  this folder keeps attempts of P13 too: those of P14 are a series of their own\n", other.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("since then", other.Output, StringComparison.Ordinal);
        Assert.StartsWith("P13-2, attempt 2: START\n", again.Output, StringComparison.Ordinal);
        Assert.Contains("since then: cheek: reject to pass", again.Output, StringComparison.Ordinal);
        Assert.Equal(3, _folder.Read("attempts.json").Split("\"number\":").Length - 1);
        Assert.Contains("<bdi>P14</bdi></td><th scope=\"row\"><bdi>P14</bdi></th><td>start</td>", _folder.Read("report.html"), StringComparison.Ordinal);
        Assert.Contains("<bdi>cheek and eye: bridge gone</bdi>", _folder.Read("report.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task ReadingsOfAnotherRecordingAreSaidToBe()
    {
        string file = _folder.Record("P15.edf", PilotFolder.Plan(17));
        CommandRun run = await Pilot(file, "--impedance", _folder.Write("r.tsv", "recording\tsite\tpair\tkohm\nP99\tcheek\ta-b\t4\n"));

        Assert.Contains("contacts: r.tsv names recording P99, not this one (P15)", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("lack a pair", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "")]
    [InlineData(2, "(1.9|2.0|2.1) s late")]
    [InlineData(-3, "(2.9|3.0|3.1) s early")]
    public async Task ShiftedMarksAreSaidToBe(int shiftS, string words)
    {
        SessionPlan plan = PilotFolder.Plan(18);
        string file = _folder.Record("P16.edf", plan);
        await File.WriteAllTextAsync(_folder.Setup, SetupText.Of(plan).Replace("from = \"annotations\"", string.Empty, StringComparison.Ordinal));
        string events = _folder.Write(
            "e.tsv",
            "onset\tduration\ttrial_type\n" + string.Concat(plan.Trials.Select(trial =>
                string.Create(CultureInfo.InvariantCulture, $"{trial.OnsetS + (trial.Role == TrialRole.Task ? shiftS : 0)}\t{trial.DurationS}\t{trial.Label}\n"))));
        CommandRun run = await Pilot(file, "--events", events);

        string said = Regex.Match(run.Output + _folder.Read("do-next.txt"), "The task marks seem .*? s (late|early).*The task marks seem ", RegexOptions.Singleline | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)).Value;
        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.Matches(words.Length == 0 ? "^$" : "^The task marks seem " + words, said);
    }

    [Fact]
    public async Task ThePageOfAPilotShowsThePictureAndWhatToDo()
    {
        string file = _folder.Record("P17.edf", PilotFolder.Bridged(19));
        await CommandRun.Of("pilot", file, "--setup", _folder.Setup, "--out", _folder.Out, "--start-because", "he leaves at noon");
        string page = _folder.Read("report.html");

        Assert.Contains("<h2>Can the session start? NOT YET</h2>", page, StringComparison.Ordinal);
        Assert.Contains("<a href=\"pilot.png\"><img src=\"data:image/png;base64,", page, StringComparison.Ordinal);
        Assert.Contains("<li>Take off the gel between ", page, StringComparison.Ordinal);
        Assert.Contains("although not-yet, because: he leaves at noon", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task FollowingAFileInAFolderThatIsNotThereEndsWith2()
    {
        CommandRun run = await CommandRun.Of("pilot", "no/such/folder/live.edf", "--follow");

        Assert.Equal((ExitCode.Usage, "error: pilot: there is no file no/such/folder/live.edf\nhint: give the path of a file that exists\n"), (run.Code, run.Error));
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
