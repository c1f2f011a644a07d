using Xunit;

namespace ChannelAudit.Cli.Tests.Completion;

/// <summary>What the program answers a shell that asks what can stand at the cursor.</summary>
public sealed class SuggestionTests
{
    [Theory]
    [InlineData("sc", "screen")]
    [InlineData(" sc", "screen")]
    [InlineData("criteria ", "check compare freeze show")]
    [InlineData("setup ", "check new")]
    [InlineData("setup c", "check")]
    [InlineData("setup new --o", "--out")]
    [InlineData("screen --f", "--fail-on --figures")]
    [InlineData("screen x.edf --out y --f", "--fail-on --figures")]
    [InlineData("screen x.edf --figures none --f", "--fail-on")]
    [InlineData("screen --figures ", "all none summary")]
    [InlineData("screen --figures s", "summary")]
    [InlineData("screen --figures=s", "--figures=summary")]
    [InlineData("screen --fail-on ", "questionable reject")]
    [InlineData("completion ", "bash fish pwsh zsh")]
    [InlineData("export ", "bids bundle")]
    [InlineData("export bids --t", "--to")]
    [InlineData("compare a b --o", "--out")]
    [InlineData("criteria show ", "--criteria --help --verbose")]
    public async Task WhatCanStandThereIsOffered(string line, string offered) => Assert.Equal(offered, await Suggested(line));

    [Theory]
    [InlineData("screen ")]
    [InlineData("screen P0")]
    [InlineData("screen --setup ")]
    [InlineData("screen --setup=se")]
    [InlineData("screen --out x")]
    [InlineData("criteria check ")]
    [InlineData("setup new ")]
    [InlineData("setup new P07.edf --out ")]
    [InlineData("setup check setup.toml ")]
    [InlineData("screen -- --f")]
    [InlineData("compare ")]
    [InlineData("compare a ")]
    [InlineData("export bids ")]
    [InlineData("export bids audit --to ")]
    [InlineData("scren --f")]
    [InlineData("zebra ")]
    [InlineData("screen \"my fi")]
    public async Task WherePathsStandOrNothingIsKnownTheShellOffersFiles(string line) => Assert.Empty(await Suggested(line));

    [Fact]
    public async Task EveryCommandIsOffered()
    {
        string[] commands = [.. CommandTree.Paths().Where(path => path.Length == 1).Select(path => path[0]).Order(StringComparer.Ordinal)];

        Assert.Equal(string.Join(' ', commands), await Suggested(string.Empty));
    }

    [Theory]
    [InlineData("[suggest:2]", "screen")]
    [InlineData("[suggest:99]", "sc")]
    [InlineData("[suggest]", "sc")]
    [InlineData("[suggest:x]", "sc")]
    public async Task ThePlaceOfTheCursorCountsAndTheEndIsTakenWithoutOne(string directive, string line)
    {
        CommandRun run = await CommandRun.Of(directive, line);

        Assert.Equal(new CommandRun(ExitCode.Done, "screen\n", string.Empty), run);
    }

    private static async Task<string> Suggested(string line)
    {
        CommandRun run = await CommandRun.Of($"[suggest:{line.Length}]", line);

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        return string.Join(' ', run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }
}
