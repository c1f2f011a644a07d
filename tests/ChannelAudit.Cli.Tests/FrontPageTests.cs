using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests;

public sealed class FrontPageTests
{
    [Fact]
    public async Task TheKeptHelpIsWhatTheCommandsSay()
    {
        CommandRun run = await CommandRun.Of("--help");
        Golden.Match("../src/ChannelAudit.Cli/FrontPage.txt", run.Output);
        Assert.Equal(run.Output, FrontPage.Text(), StringComparer.Ordinal);
        Assert.True(System.Text.Ascii.IsValid(FrontPage.Text()), "no terminal shows all of it");
    }

    [Theory]
    [InlineData("--help", true)]
    [InlineData("-h", true)]
    [InlineData("screen", false)]
    [InlineData("--version", false)]
    public void OnlyTheHelpOfTheProgramIsKept(string word, bool isKept) => Assert.Equal(isKept, FrontPage.IsAskedBy([word]));

    [Fact]
    public void HelpAmongOtherWordsIsLeftToTheCommands() => Assert.False(FrontPage.IsAskedBy(["--help", "screen"]));
}
