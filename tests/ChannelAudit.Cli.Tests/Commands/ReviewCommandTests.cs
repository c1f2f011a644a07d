using System.CommandLine;
using ChannelAudit.Cli.Commands;
using ChannelAudit.Cli.Tests.Demo;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

/// <summary><c>review</c> up to the start of the program that serves the page; that one has tests of its own.</summary>
public sealed class ReviewCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("", "channelaudit review: --by is missing")]
    [InlineData("--by V --seed 3", "channelaudit review: --seed needs --blind")]
    [InlineData("--by V --cells some", "--cells: 'some' is not known")]
    [InlineData("--by V --port 70000", "--port: 70000 is not from 0 to 65535")]
    [InlineData("--by V --blind", "a blind review needs --data: the pictures inside an audit show its verdicts")]
    [InlineData("--by V --data nowhere-at-all", "--data: there is no folder nowhere-at-all")]
    [InlineData("--read-only", "channelaudit-review: not beside channelaudit, or it cannot be started")]
    public async Task WrongUsageIsOneErrorAndOneHint(string words, string error)
    {
        _folder.Write("rows.csv", "time,EMG 1\n" + string.Concat(Enumerable.Range(0, 3000)
            .Select(i => FormattableString.Invariant($"{i / 1000.0:0.000},{i * 7919 % 1009 / 100.0:0.000}\n"))));
        CommandRun made = await DemoRun.Run(["screen", _folder.In("rows.csv"), "--figures", "none", "--out", _folder.In("audit")]);
        Assert.Equal(ExitCode.Done, made.Code);

        CommandRun run = await CommandRun.Of(["review", _folder.In("audit"), .. words.Split(' ', StringSplitOptions.RemoveEmptyEntries)]);

        Assert.StartsWith($"error: {error}", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, run.Error.TrimEnd('\n').Split('\n').Length);
        Assert.Equal((ExitCode.Usage, string.Empty), (run.Code, run.Output));
    }

    [Fact]
    public async Task WhatIsNoAuditIsNamed()
    {
        CommandRun run = await CommandRun.Of("review", _folder.Folder, "--by", "R.Viewer");

        Assert.StartsWith($"error: {_folder.Folder}: not an audit", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void TheOtherProgramIsToldAllOfIt()
    {
        ReviewWords words = new();
        Command command = new("review") { words.Folder, words.Data, words.By, words.Blind, words.Seed, words.Cells, words.ReadOnly, words.Port };

        (ReviewOptions options, int port) = words.Of(command.Parse(["audit", "--data", "a b", "--by", "R. Viewer", "--blind", "--seed", "7", "--cells", "all", "--port", "8080"]));

        Assert.Equal(
            ["audit", "--follow-input", "--port", "8080", "--data", "a b", "--by", "R. Viewer", "--blind", "--seed", "7", "--cells", "all"],
            ReviewWords.For(options, port),
            StringComparer.Ordinal);
    }
}
