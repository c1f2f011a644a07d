using ChannelAudit.Criteria;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

public sealed class CriteriaCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task ShowPrintsAllDefaults()
    {
        CommandRun run = await CommandRun.Of("criteria", "show");

        Golden.Match("ChannelAudit.Cli.Tests/Golden/criteria-show.txt", run.Output);
        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Empty(run.Error);
    }

    [Fact]
    public async Task WhatIsShownCanBeReadBack()
    {
        CommandRun shown = await CommandRun.Of("criteria", "show");
        string path = _folder.Write("again.toml", shown.Output);

        CommandRun run = await CommandRun.Of("criteria", "check", path);

        Assert.Equal(
            $"again.toml: in order; nothing differs from the defaults\nSHA-256 of the limits: {DefaultCriteria.All.Sha256}\n", run.Output);
    }

    [Fact]
    public async Task ShowPrintsTheLimitsOfAFileOverTheDefaults()
    {
        string path = _folder.Write("lab.toml", "[flatline]\nreject = [{ flat_run = 100 }]\nsource = \"pilot study\"\n");

        CommandRun run = await CommandRun.Of("criteria", "show", "--criteria", path);

        Assert.StartsWith("# Limits in force in channelaudit 0.1.0: lab.toml over the defaults.\n# SHA-256 of the limits: ", run.Output, StringComparison.Ordinal);
        Assert.Contains("reject = [{ flat_run = 100.0 }]\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("source = \"pilot study\"\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task CheckPrintsWhatAFileChanges()
    {
        string path = _folder.Write("lab.toml", "[flatline]\nreject = [{ flat_run = 100 }]\nchannel_reject = []\n");

        CommandRun run = await CommandRun.Of("criteria", "check", path);

        Assert.StartsWith(
            """
            lab.toml: in order; 2 lists of limits differ from the defaults
              [flatline] reject: [{ flat_run = 200.0 }] -> [{ flat_run = 100.0 }]
              [flatline] channel_reject: [{ flat = 5.0 }] -> []
            SHA-256 of the limits: 
            """,
            run.Output,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task AWrongFileEndsWith2()
    {
        string path = _folder.Write("lab.toml", "[flatline]\nrejct = []\n");

        CommandRun run = await CommandRun.Of("criteria", "check", path);

        Assert.Equal("error: lab.toml, line 2: unknown key 'rejct' in [flatline]\nhint: did you mean 'reject'?\n", run.Error);
        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Empty(run.Output);
    }
}
