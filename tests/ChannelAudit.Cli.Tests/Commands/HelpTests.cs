using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

public sealed class HelpTests
{
    [Theory]
    [InlineData("help.txt")]
    [InlineData("help-screen.txt", "screen")]
    [InlineData("help-demo.txt", "demo")]
    [InlineData("help-criteria.txt", "criteria")]
    [InlineData("help-criteria-show.txt", "criteria", "show")]
    [InlineData("help-criteria-check.txt", "criteria", "check")]
    [InlineData("help-setup.txt", "setup")]
    [InlineData("help-setup-check.txt", "setup", "check")]
    public async Task HelpIsAsKept(string file, params string[] command)
    {
        CommandRun run = await CommandRun.Of([.. command, "--help"]);

        Golden.Match("ChannelAudit.Cli.Tests/Golden/" + file, run.Output);
        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Empty(run.Error);
    }

    [Theory]
    [InlineData("-h")]
    [InlineData("--help")]
    public async Task HelpIsShownWhateverElseIsWrong(string help)
    {
        CommandRun run = await CommandRun.Of("screen", "--bogus", help);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.StartsWith("Description:\n  Says for every channel", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task EveryHelpHasAnExampleAndFitsTheScreen()
    {
        foreach (string[] command in (string[][])[[], ["screen"], ["demo"], ["criteria"], ["criteria", "show"], ["criteria", "check"], ["setup"], ["setup", "check"]])
        {
            CommandRun run = await CommandRun.Of([.. command, "--help"]);

            Assert.Contains("\nExample:\n  channelaudit ", run.Output, StringComparison.Ordinal);
            Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.TrimEnd().Length, 0, 100));
        }
    }

    [Fact]
    public async Task VersionIsNameAndNumber()
    {
        CommandRun run = await CommandRun.Of("--version");

        Assert.Equal("channelaudit 0.1.0\n", run.Output);
        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Empty(run.Error);
    }
}
