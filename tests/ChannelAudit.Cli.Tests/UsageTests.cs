using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests;

/// <summary>Every text about a command line that is not understood.</summary>
public sealed class UsageTests
{
    [Theory]
    [InlineData(
        "", "channelaudit: no command given", "one of screen, pilot, demo, detectability, merge, decide, review, compare, reconcile, raters, trend, verify, export, impedance, criteria, setup, explain, completion; channelaudit --help says what they do")]
    [InlineData(
        "criteria", "channelaudit criteria: no command given", "one of show, check, freeze, compare; channelaudit criteria --help says what they do")]
    [InlineData("scren x.edf", "channelaudit: there is no command 'scren'", "did you mean 'screen'?")]
    [InlineData("zebra", "channelaudit: there is no command 'zebra'", "channelaudit --help says what can be given")]
    [InlineData("criteria shw", "channelaudit criteria: there is no command 'shw'", "did you mean 'show'?")]
    [InlineData("--verbos", "channelaudit: there is no option '--verbos'", "did you mean '--verbose'?")]
    [InlineData("-x", "channelaudit: there is no option '-x'", "channelaudit --help says what can be given")]
    [InlineData("screen x.edf --setpu s.toml", "channelaudit screen: there is no option '--setpu'", "did you mean '--setup'?")]
    [InlineData("screen x.edf --ot=a", "channelaudit screen: there is no option '--ot'", "did you mean '--out'?")]
    [InlineData("screen x.edf --VERBOSE", "channelaudit screen: there is no option '--VERBOSE'", "did you mean '--verbose'?")]
    [InlineData("screen x.edf --version", "channelaudit screen: there is no option '--version'", "channelaudit screen --help says what can be given")]
    [InlineData(
        "screen", "channelaudit screen: PATH is missing",
        "PATH: recordings (EDF, BDF or delimited text), folders that are searched for them, patterns in quotes; channelaudit screen --help has an example")]
    [InlineData("screen x.edf --out", "channelaudit screen: --out needs a value", "write --out DIR")]
    [InlineData("screen x.edf --out=", "channelaudit screen: --out needs a value", "write --out DIR")]
    [InlineData("screen x.edf --setup --out a", "channelaudit screen: --setup needs a value", "write --setup FILE")]
    [InlineData("screen x.edf --out a --out b", "channelaudit screen: --out is given more than once", "keep one of them")]
    [InlineData("screen x.edf --figures most", "--figures: 'most' is not known", "--figures takes none, summary or all")]
    [InlineData("screen x.edf --figures al", "--figures: 'al' is not known", "did you mean 'all'? --figures takes none, summary or all")]
    [InlineData("screen x.edf --fail-on pass", "--fail-on: 'pass' is not known", "--fail-on takes questionable or reject")]
    [InlineData("screen x.edf --verbose=yes", "channelaudit screen: --verbose takes no value", "write --verbose alone")]
    [InlineData("help", "channelaudit: there is no command 'help'", "did you mean '--help'?")]
    [InlineData("version", "channelaudit: there is no command 'version'", "did you mean '--version'?")]
    [InlineData("setup", "channelaudit setup: no command given", "one of new, check; channelaudit setup --help says what they do")]
    [InlineData("completion", "channelaudit completion: SHELL is missing", "SHELL: bash, zsh, fish or pwsh; channelaudit completion --help has an example")]
    [InlineData("criteria check a b", "channelaudit criteria check: 'b' is one too many", "channelaudit criteria check --help says what can be given")]
    [InlineData("criteria check @a", "@a: there is no such file", "give the path of a file that exists")]
    [InlineData("criteria check", "channelaudit criteria check: FILE is missing", "FILE: the criteria file; channelaudit criteria check --help has an example")]
    public async Task WhatIsNotUnderstoodEndsWithTwoLinesAndCode2(string words, string error, string hint)
    {
        CommandRun run = await CommandRun.Of(words.Split(' ', StringSplitOptions.RemoveEmptyEntries));

        Assert.Equal($"error: {error}\nhint: {hint}\n", run.Error);
        Assert.Empty(run.Output);
        Assert.Equal(ExitCode.Usage, run.Code);
    }

    [Fact]
    public async Task BehindTwoDashesEverythingIsAFile()
    {
        CommandRun run = await CommandRun.Of("screen", "--", "-x.edf");

        Assert.Equal(
            "error: -x.edf: there is no such file or folder\nhint: give recordings, or folders that hold recordings\n", run.Error);
    }

    [Theory]
    [InlineData("channelaudit screen: PATH is empty", "screen", "")]
    [InlineData("channelaudit screen: PATH is empty", "screen", "x.edf", " ")]
    [InlineData("channelaudit demo: DIR is empty", "demo", "")]
    [InlineData("channelaudit criteria check: FILE is empty", "criteria", "check", "")]
    public async Task AnEmptyWordIsNoPath(string error, params string[] words)
    {
        CommandRun run = await CommandRun.Of(words);

        Assert.Equal($"error: {error}\nhint: write a name between the quotes, or look whether a variable of a script is set\n", run.Error);
        Assert.Equal(ExitCode.Usage, run.Code);
    }

    [Theory]
    [InlineData("--out", "DIR")]
    [InlineData("--setup", "FILE")]
    public async Task AnEmptyValueIsNone(string option, string value)
    {
        CommandRun run = await CommandRun.Of("screen", "x.edf", option, "");

        Assert.Equal($"error: channelaudit screen: {option} needs a value\nhint: write {option} {value}\n", run.Error);
        Assert.Equal(ExitCode.Usage, run.Code);
    }

    [Fact]
    public async Task APathInPlaceOfACommandIsProbablyToBeScreened()
    {
        CommandRun run = await CommandRun.Of(".");

        Assert.Equal("error: channelaudit: there is no command '.'\nhint: did you mean 'channelaudit screen .'?\n", run.Error);
        Assert.Equal(ExitCode.Usage, run.Code);
    }

    [Fact]
    public async Task AFileInPlaceOfAFolderAndTheOtherWayRoundAreSaid()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("x.edf");

        CommandRun demo = await CommandRun.Of("demo", file);
        CommandRun events = await CommandRun.Of("screen", file, "--events", ".");

        Assert.Equal($"error: {file}: a file, not a folder\nhint: give a new or an empty folder\n", demo.Error);
        Assert.Equal("error: --events: . is a folder, not a file\nhint: give the file inside the folder\n", events.Error);
        Assert.Equal((ExitCode.Usage, ExitCode.Usage), (demo.Code, events.Code));
    }
}
