using ChannelAudit.Cli.Screening;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Cli.Tests.Screening;

public sealed class ScreenRunnerTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public ScreenRunnerTests()
    {
        _folder.Write("data/P08.edf");
        _folder.Write("data/day1/P07.edf");
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task EveryRecordingOfAFolderIsAuditedAndWritten()
    {
        var engine = new RecordedEngine();

        CommandRun run = await Screen(engine);

        Assert.Equal("P08, day1+P07", string.Join(", ", engine.Audited));
        Assert.Equal("P08, day1+P07", string.Join(", ", engine.Digest!.Recordings.Select(recording => recording.Id)));
        Assert.Equal("0.1.0", engine.Written!.Version);
        Assert.Equal(_folder.In("out"), engine.Folder);
        Assert.Equal($"{_folder.In("out")}: printed\n", run.Output);
        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Empty(run.Error);
    }

    [Fact]
    public async Task SetupCriteriaAndEventsReachTheEngine()
    {
        string setup = _folder.Write("setup.toml", "[recording]\nmains_hz = 60\n");
        string criteria = _folder.Write("lab.toml", "[flatline]\nreject = []\n");
        string events = _folder.Write("data/when.tsv");
        var engine = new RecordedEngine();

        await CommandRun.With(
            engine,
            CancellationToken.None,
            ["screen", _folder.In("data/P08.edf"), "--out", _folder.In("out"), "--setup", setup, "--criteria", criteria, "--events", events]);

        Assert.Equal(60, engine.Inputs!.Setup.Recording.MainsHz);
        Assert.Empty(engine.Inputs.Criteria.For("flatline").Reject);
        Assert.Equal(events, engine.Inputs.EventsFile);
        Assert.Equal("P08", string.Join(", ", engine.Audited));
    }

    [Theory]
    [InlineData(false, "the file was changed while it was read")]
    [InlineData(true, "the file was removed while it was read")]
    public async Task ARecordingThatSomebodyChangesMeanwhileIsNotAudited(bool isRemoved, string what)
    {
        Action<string> change = isRemoved ? File.Delete : file => File.AppendAllText(file, "more");
        var engine = new RecordedEngine
        {
            Before = id =>
            {
                if (id is "P08")
                {
                    change(_folder.In("data/P08.edf"));
                }
            },
        };

        CommandRun run = await Screen(engine);

        Assert.Contains($"error: P08.edf: {what}\nhint: ", run.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Unread, run.Code);
        Assert.Equal("day1+P07", string.Join(", ", engine.Digest!.Recordings.Select(recording => recording.Id)));
    }

    [Theory]
    [InlineData("y", true)]
    [InlineData("x", false)]
    public async Task ATouchIsNoChangeAndOtherBytesOfTheSameLengthAre(string now, bool isAudited)
    {
        string file = _folder.Write("data/P08.edf", "y");
        var engine = new RecordedEngine
        {
            Before = id =>
            {
                if (id is "P08")
                {
                    File.WriteAllText(file, now);
                    File.SetLastWriteTimeUtc(file, new DateTime(2030, 1, 1, 0, 0, 0, DateTimeKind.Utc));
                }
            },
        };

        CommandRun run = await Screen(engine);

        Assert.Equal(isAudited ? (ExitCode.Done, 2) : (ExitCode.Unread, 1), (run.Code, engine.Digest!.Recordings.Length));
        Assert.Equal(!isAudited, run.Error.Contains("error: P08.edf: the file was changed while it was read", StringComparison.Ordinal));
    }

    [Fact]
    public async Task OneEventsTableForSeveralRecordingsIsRefused()
    {
        string events = _folder.Write("when.tsv");
        var engine = new RecordedEngine();

        CommandRun run = await Screen(engine, "--events", events);

        Assert.StartsWith($"error: --events: {events} holds the events of one recording, and 2 were given\nhint: put a table beside each recording", run.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Empty(engine.Audited);
    }

    [Fact]
    public async Task PatternsOfTheSetupThatFitNothingAreNamed()
    {
        string setup = _folder.Write("setup.toml", "[participants]\npath = \"{group}/{participant}\"\n[[recordings]]\nmatch = [\"day1/*\", \"day2/*\"]\namplifier = \"B\"\n");
        var engine = new RecordedEngine();

        await Screen(engine, "--setup", setup);

        Assert.Equal(
            [
                "setup.toml, [[recordings]]: match 'day2/*' fits no recording of this run, whose paths are like 'P08.edf': nothing is applied",
                "setup.toml, [participants]: path '{group}/{participant}' fits 1 of 2 recordings; whose 'P08.edf' is, is not known",
            ],
            engine.Written!.Warnings.Select(warning => $"{warning.File}, {warning.Place}: {warning.Message}"),
            StringComparer.Ordinal);
    }

    [Fact]
    public async Task ManyPatternsThatFitNothingAreOneWarning()
    {
        string setup = _folder.Write("setup.toml", "[[recordings]]\nmatch = [\"P1/*\", \"P2/*\"]\namplifier = \"A\"\n[[recordings]]\nmatch = [\"P3/*\", \"P4/*\"]\namplifier = \"B\"\n");
        var engine = new RecordedEngine();

        await Screen(engine, "--setup", setup);

        Assert.Equal(
            "match 'P1/*', 'P2/*' and 2 more fit no recording of this run, whose paths are like 'P08.edf': nothing is applied",
            Assert.Single(engine.Written!.Warnings).Message);
    }

    [Fact]
    public async Task ReadingsReachTheEngineByRecording()
    {
        string readings = _folder.Write("data/meter.tsv", "recording\tsite\tpair\tkohm\nP08\tcheek\ta-b\t4\nday1+P07\tcheek\ta-b\tn/a\nP09\tcheek\ta-b\t4\n");
        var engine = new RecordedEngine();

        await Screen(engine, "--impedance", readings);

        Assert.Equal(2, engine.Inputs!.Impedance!.Readings.Length);
        Assert.Equal("P08, day1+P07", string.Join(", ", engine.Audited));
        Assert.Equal("meter.tsv", engine.Written!.Impedance!.FileName);
        Assert.Equal(
            [
                new("meter.tsv", "line 3", "no value: this reading counts as not taken"),
                new("meter.tsv", "column recording", "readings of 'P09', which is not among the recordings of this run, are not used"),
            ],
            engine.Written.Warnings.ToArray());
    }

    [Fact]
    public async Task ReadingsOfSeveralRecordingsMustSayWhose()
    {
        string readings = _folder.Write("data/meter.tsv", "site\tpair\tkohm\ncheek\ta-b\t4\n");
        var several = new RecordedEngine();
        var one = new RecordedEngine();

        CommandRun refused = await Screen(several, "--impedance", readings);
        CommandRun taken = await CommandRun.With(one, CancellationToken.None, "screen", _folder.In("data/P08.edf"), "--out", _folder.In("out"), "--impedance", readings);

        Assert.Equal(
            (ExitCode.Usage,
            "error: meter.tsv: does not say which of the 2 recordings its readings belong to\n"
                + "hint: add a column recording with the recording's ID in every line, such as P08, or screen one recording alone\n"),
            (refused.Code, refused.Error));
        Assert.Empty(several.Audited);
        Assert.Equal((ExitCode.Done, 1), (taken.Code, one.Inputs!.Impedance!.Readings.Length));
    }

    [Fact]
    public async Task FiguresAreAllForOneRecordingAndASummaryForSeveral()
    {
        var several = new RecordedEngine();
        var one = new RecordedEngine();
        var asked = new RecordedEngine();

        await Screen(several);
        await CommandRun.With(one, CancellationToken.None, "screen", _folder.In("data/P08.edf"), "--out", _folder.In("out"));
        await Screen(asked, "--figures", "none");

        Assert.Equal(FigureChoice.Summary, several.Figures);
        Assert.Equal(FigureChoice.All, one.Figures);
        Assert.Equal(FigureChoice.None, asked.Figures);
    }

    [Fact]
    public async Task ARecordingThatCannotBeReadIsSaidAndTheOthersAreAudited()
    {
        var engine = new RecordedEngine { Before = id => Refuse(id, "P08", FaultKind.Recording) };

        CommandRun run = await Screen(engine, "--fail-on", "questionable");

        Assert.Equal("error: P08.edf, header: not a number\nhint: ask for a new copy\n", run.Error);
        Assert.Equal("day1+P07", Assert.Single(engine.Digest!.Recordings).Id);
        Assert.Equal("P08.edf", Assert.Single(engine.Digest!.Unread).Path);
        Assert.Equal(ExitCode.Unread, run.Code);
    }

    [Fact]
    public async Task AnUnreadRecordingCountsBeforeFailOn()
    {
        var engine = new RecordedEngine { ChannelVerdict = Grade.Reject, Before = id => Refuse(id, "P08", FaultKind.Recording) };

        Assert.Equal(ExitCode.Unread, (await Screen(engine, "--fail-on", "reject")).Code);
    }

    [Fact]
    public async Task WhenNothingCouldBeReadNothingIsWritten()
    {
        var engine = new RecordedEngine { Before = id => Refuse(id, id, FaultKind.Recording) };

        CommandRun run = await Screen(engine);

        Assert.Null(engine.Written);
        Assert.Empty(run.Output);
        Assert.Equal(ExitCode.Unread, run.Code);
    }

    [Fact]
    public async Task ASetupThatDoesNotFitEndsTheRunWithNothingWritten()
    {
        var engine = new RecordedEngine { Before = id => Refuse(id, "day1+P07", FaultKind.Usage) };

        CommandRun run = await Screen(engine);

        Assert.Null(engine.Written);
        Assert.Equal(ExitCode.Usage, run.Code);
    }

    [Theory]
    [InlineData(Grade.Pass, Grade.Pass, "questionable", ExitCode.Done)]
    [InlineData(Grade.Questionable, Grade.Pass, "questionable", ExitCode.Reached)]
    [InlineData(Grade.Pass, Grade.Questionable, "questionable", ExitCode.Reached)]
    [InlineData(Grade.Pass, Grade.Reject, "questionable", ExitCode.Reached)]
    [InlineData(Grade.Questionable, Grade.Questionable, "reject", ExitCode.Done)]
    [InlineData(Grade.Pass, Grade.Reject, "reject", ExitCode.Reached)]
    [InlineData(Grade.Reject, Grade.Pass, "reject", ExitCode.Reached)]
    public async Task FailOnLooksAtChannelsAndTrials(Grade channel, Grade trial, string failOn, int code)
    {
        var engine = new RecordedEngine { ChannelVerdict = channel, TrialVerdict = trial };

        Assert.Equal(code, (await Screen(engine, "--fail-on", failOn)).Code);
        Assert.NotNull(engine.Written);
    }

    [Fact]
    public async Task BadVerdictsAloneDoNotFail() =>
        Assert.Equal(ExitCode.Done, (await Screen(new RecordedEngine { ChannelVerdict = Grade.Reject })).Code);

    [Fact]
    public async Task AForeignOutputFolderIsRefusedBeforeAnyWork()
    {
        _folder.Write("out/thesis.docx");
        var engine = new RecordedEngine();

        CommandRun run = await Screen(engine);

        Assert.Equal(
            $"error: {_folder.In("out")}: not empty and not an audit: 'thesis.docx' is in it\nhint: give an empty or a new folder with --out\n",
            run.Error);
        Assert.Empty(engine.Audited);
        Assert.Equal(ExitCode.Usage, run.Code);
    }

    [Theory]
    [InlineData("--setup")]
    [InlineData("--criteria")]
    public async Task AMissingFileIsRefusedBeforeAnyWork(string option)
    {
        var engine = new RecordedEngine();

        CommandRun run = await Screen(engine, option, "no/such.toml");

        Assert.Equal("error: no/such.toml: there is no such file\nhint: give the path of a file that exists\n", run.Error);
        Assert.Empty(engine.Audited);
    }

    [Fact]
    public async Task AMissingEventsTableIsRefusedBeforeAnyWork()
    {
        var engine = new RecordedEngine();

        CommandRun run = await Screen(engine, "--events", "no/such.tsv");

        Assert.Equal("error: --events: there is no file no/such.tsv\nhint: give the path of a file that exists\n", run.Error);
        Assert.Empty(engine.Audited);
    }

    private static void Refuse(string id, string refused, FaultKind kind)
    {
        if (string.Equals(id, refused, StringComparison.Ordinal))
        {
            throw new ChannelAuditException(kind, $"{id}.edf, header: not a number", "ask for a new copy");
        }
    }

    private Task<CommandRun> Screen(RecordedEngine engine, params string[] more) =>
        CommandRun.With(engine, CancellationToken.None, ["screen", _folder.In("data"), "--out", _folder.In("out"), .. more]);
}
