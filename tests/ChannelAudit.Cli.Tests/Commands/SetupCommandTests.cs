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

        Assert.Equal(
            "setup.toml: can be read, not yet filled in; 2 sites\n  cheek: channel 'EMG 1'\n  brow: channel 'EMG 2'\n"
                + "still to fill in, or to leave where you do not know:\n  task of cheek, brow: whether its muscle answers cannot be checked\n"
                + "  muscle of cheek, brow: its place on the face is not known, if its name does not tell\n"
                + "  side of cheek, brow: it is drawn on the left (or give position)\n"
                + "  adjacent: at no site, so nothing tells which sites gel can join\n  rest, in [trials]: no label, so the quietest seconds stand for it\n",
            run.Output);
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
        Assert.StartsWith(
            "my setup.toml: can be read, not yet filled in; 2 sites\n  EMG 1: channel 'EMG 1'\n  EMG 2: channel 'EMG 2'\nstill to fill in,", check.Output, StringComparison.Ordinal);
        Assert.Contains("  task of EMG 1, EMG 2: ", check.Output, StringComparison.Ordinal);
        Assert.EndsWith("rows.tsv: fits; 2 channels, 1 trial from events\n", check.Output, StringComparison.Ordinal);
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

        Assert.Equal("error: setup new: there is no file nowhere.edf\nhint: give the path of a file that exists\n", missing.Error);
        Assert.StartsWith($"error: {_folder.In("none/a.toml")}: there is no such folder to write into\nhint: ", noFolder.Error, StringComparison.Ordinal);
        Assert.StartsWith("error: note.txt: not a recording", noRecording.Error, StringComparison.Ordinal);
        Assert.Equal((ExitCode.Usage, ExitCode.Usage, ExitCode.Unread), (missing.Code, noFolder.Code, noRecording.Code));
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
        Assert.Equal(
            "b.toml: can be read, not yet filled in; 0 sites\nstill to fill in, or to leave where you do not know:\n"
                + "  sites: none, so no channel has the name of a place, a task or neighbours\nrows.tsv: fits; 2 channels, 1 trial from events\n  rest: 1 trial labelled 'rest'\n",
            fits.Output);
    }

    [Fact]
    public async Task WhatDiffersInARecordingIsAppliedAndPrinted()
    {
        string recording = Path.Combine(Path.GetDirectoryName(Recording())!, "near", "P07_day1.tsv");
        Directory.CreateDirectory(Path.GetDirectoryName(recording)!);
        File.Copy(Recording(), recording);
        string path = _folder.Write(
            "setup.toml",
            "[participants]\npath = \"{group}/{participant}_*\"\n[scoring]\nhighpass_hz = 20.0\n[protocol]\ntrials = { rest = 1 }\ngap_s = [0.5, 9.0]\n"
                + "[[sites]]\nname = \"cheek\"\nchannel = \"EMG 9\"\n[[recordings]]\nmatch = \"near/P07_*\"\nchannels = { cheek = \"EMG 2\" }\namplifier = \"B\"\n");

        CommandRun other = await CommandRun.Of("setup", "check", path, Recording());
        CommandRun run = await CommandRun.Of("setup", "check", path, recording);

        Assert.Contains(
            "  cheek: channel 'EMG 9'\n  scoring: high-pass 20 Hz (order 2)\n  participants: from paths like '{group}/{participant}_*'\n"
                + "  recordings 'near/P07_*': cheek is channel 'EMG 2', amplifier B\n  protocol: 1 of 'rest'; distances checked\n",
            run.Output,
            StringComparison.Ordinal);
        Assert.Contains(
            "  participant P07, group near (as 'near/P07_day1.tsv' below the folder screened)\n  with what is different for 'near/P07_*'\n", run.Output, StringComparison.Ordinal);
        Assert.StartsWith("error: setup.toml, site 'cheek': channel 'EMG 9' is not in rows.tsv", other.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ASetupThatLacksNothingIsInOrder()
    {
        const string site = "[[sites]]\nname = \"cheek\"\nchannel = \"EMG 1\"\nmuscle = \"zygomaticus major\"\nside = \"left\"\nadjacent = [\"ground\"]\ntask = \"raise lip corner\"\n";
        CommandRun run = await CommandRun.Of("setup", "check", _folder.Write("setup.toml", site + "[trials]\nrest = [\"rest\"]\n"));

        Assert.Equal((ExitCode.Done, "setup.toml: in order; 1 site\n  cheek: channel 'EMG 1'\n"), (run.Code, run.Output));
    }

    [Fact]
    public async Task CheckAgainstARecordingThatIsNotThereEndsWith2()
    {
        CommandRun run = await CommandRun.Of("setup", "check", _folder.Write("setup.toml", "[trials]\nrest = [\"rest\"]\n"), "nowhere.edf");

        Assert.Equal((ExitCode.Usage, "error: setup check: there is no file nowhere.edf\nhint: give the path of a file that exists\n"), (run.Code, run.Error));
    }

    private string Recording()
    {
        _folder.Write("rows_events.tsv", "onset\tduration\ttrial_type\n0\t1\trest\n");
        return _folder.Write("rows.tsv", "time\tEMG 1\tEMG 2\n" + string.Concat(Enumerable.Range(0, 200)
            .Select(i => FormattableString.Invariant($"{i / 100.0:0.00}\t{(i * 3 % 17) - 8.5}\t{(i * 5 % 13) - 6.5}\n"))));
    }
}
