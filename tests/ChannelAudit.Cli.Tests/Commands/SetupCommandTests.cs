using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

public sealed class SetupCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task CheckPrintsTheSites()
    {
        string path = _folder.Write(
            "setup.toml", "[[sites]]\nname = \"cheek\"\nchannel = \"EMG 1\"\n[[sites]]\nname = \"brow\"\nchannel = \"EMG 2\"\n");

        CommandRun run = await CommandRun.Of("setup", "check", path);

        Assert.Equal("setup.toml: in order; 2 sites\n  cheek: channel 'EMG 1'\n  brow: channel 'EMG 2'\n", run.Output);
        Assert.Equal(ExitCode.Done, run.Code);
    }

    [Fact]
    public async Task AWrongSetupEndsWith2()
    {
        string path = _folder.Write("setup.toml", "[recording]\nmains = 50\n");

        CommandRun run = await CommandRun.Of("setup", "check", path);

        Assert.Equal("error: setup.toml, line 2: unknown key 'mains' in [recording]\nhint: did you mean 'mains_hz'?\n", run.Error);
        Assert.Equal(ExitCode.Usage, run.Code);
    }

    [Fact]
    public async Task NewWritesASetupThatCheckAcceptsAndNeverWritesOverIt()
    {
        string file = _folder.In("my setup.toml");

        CommandRun written = await CommandRun.Of("setup", "new", Recording(), "--out", file);
        string text = await File.ReadAllTextAsync(file);
        CommandRun check = await CommandRun.Of("setup", "check", file, Recording());
        CommandRun again = await CommandRun.Of("setup", "new", Recording(), "--out", file);

        Assert.Equal($"Written to {file}: 2 sites, 1 label of trials, and lines to complete\nThen: channelaudit setup check \"{file}\" {Recording()}\n", written.Output);
        Assert.Equal(
            "my setup.toml: in order; 2 sites\n  EMG 1: channel 'EMG 1'\n  EMG 2: channel 'EMG 2'\nrows.tsv: fits; 2 channels, 1 trial from events\n", check.Output);
        Assert.Equal(
            $"error: {file}: is there already and stays as it is\nhint: name another file with --out, or see the text with --out -\n", again.Error);
        Assert.Equal((ExitCode.Done, ExitCode.Done, ExitCode.Usage), (written.Code, check.Code, again.Code));
        Assert.Equal(text, await File.ReadAllTextAsync(file));
        Assert.Equal(["my setup.toml", "rows.tsv", "rows_events.tsv"], Directory.GetFiles(_folder.Folder).Select(Path.GetFileName).Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    [Fact]
    public async Task NewPrintsTheSameTextThatItWouldWrite()
    {
        string file = _folder.In("setup.toml");

        CommandRun printed = await CommandRun.Of("setup", "new", Recording(), "--out", "-");
        await CommandRun.Of("setup", "new", Recording(), "--out", file);

        Assert.Equal(await File.ReadAllTextAsync(file), printed.Output);
        Assert.StartsWith("# What was where", printed.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task NewSaysWhatIsWrongWithARecordingOrAPlace()
    {
        CommandRun missing = await CommandRun.Of("setup", "new", "nowhere.edf", "--out", _folder.In("a.toml"));
        CommandRun noFolder = await CommandRun.Of("setup", "new", Recording(), "--out", _folder.In("none/a.toml"));
        CommandRun noRecording = await CommandRun.Of("setup", "new", _folder.Write("note.txt", "no table"), "--out", _folder.In("a.toml"));

        Assert.Equal("error: nowhere.edf: there is no such file\nhint: check the spelling of the path\n", missing.Error);
        Assert.StartsWith($"error: {_folder.In("none/a.toml")}: there is no such folder to write into\nhint: ", noFolder.Error, StringComparison.Ordinal);
        Assert.StartsWith("error: note.txt: not a recording", noRecording.Error, StringComparison.Ordinal);
        Assert.Equal((ExitCode.Unread, ExitCode.Usage, ExitCode.Unread), (missing.Code, noFolder.Code, noRecording.Code));
        Assert.False(File.Exists(_folder.In("a.toml")));
    }

    [SkippableFact]
    public async Task AFolderThatMayNotBeWrittenIntoIsNamed()
    {
        Skip.IfNot(Directory.Exists("/proc/self"), "needs a folder that nobody may write into, /proc");

        CommandRun run = await CommandRun.Of("setup", "new", Recording(), "--out", "/proc/setup.toml");

        Assert.StartsWith("error: /proc/setup.toml: cannot be written\nhint: ", run.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Usage, run.Code);
    }

    [Fact]
    public async Task CheckHoldsTheLabelsAgainstARecording()
    {
        string path = _folder.Write("setup.toml", "[[sites]]\nname = \"cheek\"\nchannel = \"EMG 1\"\ntask = \"smile\"\n[trials]\nrest = [\"rest\"]\n");
        CommandRun fits = await CommandRun.Of("setup", "check", _folder.Write("b.toml", "[trials]\nrest = [\"rest\"]\n"), Recording());

        CommandRun run = await CommandRun.Of("setup", "check", path, Recording());

        Assert.Equal("error: setup.toml, site 'cheek', task: no trial in rows_events.tsv is labelled 'smile'\nhint: labels there: rest\n", run.Error);
        Assert.Equal((ExitCode.Usage, string.Empty), (run.Code, run.Output));
        Assert.Equal("b.toml: in order; 0 sites\nrows.tsv: fits; 2 channels, 1 trial from events\n  rest: 1 trial labelled 'rest'\n", fits.Output);
    }

    private string Recording()
    {
        _folder.Write("rows_events.tsv", "onset\tduration\ttrial_type\n0\t1\trest\n");
        return _folder.Write("rows.tsv", "time\tEMG 1\tEMG 2\n" + string.Concat(Enumerable.Range(0, 200)
            .Select(i => FormattableString.Invariant($"{i / 100.0:0.00}\t{(i * 3 % 17) - 8.5}\t{(i * 5 % 13) - 6.5}\n"))));
    }
}
