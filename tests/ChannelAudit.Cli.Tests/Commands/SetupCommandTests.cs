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
}
