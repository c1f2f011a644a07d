using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests;

public sealed class CommandLineTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task ABugIsOwnedUpToWithoutATrace()
    {
        CommandRun run = await Screen(new RecordedEngine { Before = _ => throw new InvalidOperationException("inner words") });

        Assert.Equal(
            "error: this is a bug in channelaudit, not in your data: InvalidOperationException\n"
                + "hint: run the same command with --verbose and report what it prints\n",
            run.Error);
        Assert.Equal(ExitCode.Bug, run.Code);
    }

    [Fact]
    public async Task VerboseShowsTheTraceOfABug()
    {
        CommandRun run = await Screen(
            new RecordedEngine { Before = _ => throw new InvalidOperationException("inner words") }, "--verbose");

        Assert.Contains("debug: auditing P07.edf\n", run.Error, StringComparison.Ordinal);
        Assert.Contains("debug: where the bug showed\nSystem.InvalidOperationException: inner words\n", run.Error, StringComparison.Ordinal);
        Assert.Contains("   at ", run.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Bug, run.Code);
    }

    [Fact]
    public async Task AnErrorIsOneLineWhateverNamesItHolds()
    {
        const string hostile = "lab\nerror: another\r\u001B[2J\u202E";
        using StringWriter error = new();

        ErrorReport.Write(error, new ChannelAuditException(FaultKind.Usage, $"{hostile}: not there", $"see {hostile}"));
        CommandRun run = await Screen(new RecordedEngine { Before = _ => throw new InvalidOperationException(hostile) }, "--verbose");

        Assert.Equal("error: lab error: another ?[2J?: not there\nhint: see lab error: another ?[2J?\n", error.ToString());
        Assert.DoesNotContain(run.Error, sign => char.IsControl(sign) && sign is not '\n');
        Assert.Contains("debug: where the bug showed\nSystem.InvalidOperationException: lab\n   error: another\n   ?[2J?\n", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AnInterruptedRunEndsWith130AndWritesNothing()
    {
        using var source = new CancellationTokenSource();
        var engine = new RecordedEngine { Before = _ => source.Cancel() };
        _folder.Write("P08.edf");

        CommandRun run = await Screen(engine, source.Token, "--jobs", "1");

        Assert.Equal(
            "error: interrupted\nhint: what stood in the output folder is as it was; run the same command again, and it goes on with the rest\n", run.Error);
        Assert.Equal(ExitCode.Interrupted, run.Code);
        Assert.Null(engine.Written);
        Assert.Equal("P07", Assert.Single(engine.Audited));
    }

    [Theory]
    [InlineData("decide", "a decision that was kept stays: channelaudit decide DIR lists them; look there before you decide again")]
    [InlineData("demo", "delete the folder that was begun, and run the same command again")]
    [InlineData("verify", "nothing was left half done; run the same command again")]
    [InlineData("detectability", "nothing was left half done; run the same command again")]
    public void WhatIsSaidOfAnInterruptIsTrueOfTheCommand(string command, string hint)
    {
        using StringWriter error = new();

        ErrorReport.WriteInterrupted(error, command);

        Assert.Equal($"error: interrupted\nhint: {hint}\n", error.ToString());
    }

    [Fact]
    public async Task WithoutAnEngineThereIsNoScreen()
    {
        CommandRun run = await CommandRun.With(null, CancellationToken.None, "screen", "x");

        Assert.Equal("error: channelaudit: there is no command 'screen'\nhint: channelaudit --help says what can be given\n", run.Error);
    }

    private Task<CommandRun> Screen(RecordedEngine engine, params string[] more) => Screen(engine, CancellationToken.None, more);

    private Task<CommandRun> Screen(RecordedEngine engine, CancellationToken cancel, params string[] more)
    {
        _folder.Write("P07.edf");
        return CommandRun.With(engine, cancel, ["screen", _folder.Folder, "--out", _folder.In("out"), .. more]);
    }
}
