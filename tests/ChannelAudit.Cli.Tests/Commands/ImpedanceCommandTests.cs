using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

public sealed class ImpedanceCommandTests : IDisposable
{
    private const string Header = "site\tpair\tkohm\ttime\tphase\n";
    private const string Setup =
        "[[sites]]\nname = \"cheek\"\nchannel = \"EMG 1\"\nadjacent = [\"eye\"]\n[[sites]]\nname = \"eye\"\nchannel = \"EMG 2\"\n[[sites]]\nname = \"brow\"\nchannel = \"EMG 3\"\n";

    // A pair to wait for, gel within a pair, a contact to make again, a reading that is missing.
    private const string Preparing = Header
        + "cheek\ta-b\t9.0\t10:00\tbefore\ncheek\ta-ground\t6.2\t10:00\tbefore\ncheek\tb-ground\t5.1\t10:00\tbefore\n"
        + "cheek\ta-b\t8.1\t10:05\tbefore\ncheek\ta-ground\t6.0\t10:05\tbefore\ncheek\tb-ground\t4.9\t10:05\tbefore\n"
        + "eye\ta-b\t0.4\t10:06\tbefore\neye\ta-ground\t6.0\t10:06\tbefore\neye\tb-ground\t6.2\t10:06\tbefore\n"
        + "brow\ta-b\t25\t10:06\tbefore\nbrow\ta-ground\t22\t10:06\tbefore\n";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task TheScreenIsAsKept()
    {
        CommandRun run = await Run(Preparing, withSetup: true);

        Golden.Match("ChannelAudit.Cli.Tests/Golden/impedance.txt", run.Output);
        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
    }

    [Fact]
    public async Task SeveralRecordingsAreShownOneByOne()
    {
        CommandRun run = await Run("recording\tsite\tpair\tkohm\nK1\tcheek\ta-b\t4\nK1\tcheek\ta-ground\t4\nK1\tcheek\tb-ground\t4\nK2\tcheek\ta-b\t6\n", withSetup: false);

        Assert.Contains("K1 (r.tsv): 1 site.", run.Output, StringComparison.Ordinal);
        Assert.Contains("K2 (r.tsv): 1 site.", run.Output, StringComparison.Ordinal);
        Assert.Contains("Nothing to do.\n\nK2", run.Output, StringComparison.Ordinal);
        Assert.Contains("measure again in 5 min", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("site\tpair\tkohm\nchek\ta-b\t4\n", "error: r.tsv, line 2: site 'chek' is not in setup.toml\nhint: did you mean 'cheek'? sites there: cheek, eye, brow\n")]
    [InlineData("site\tpair\tkohm\ncheek\ta-b\t4800\n", "error: r.tsv, line 2: 4800 kΩ is no contact on skin; is it in Ω?\nhint: write kΩ: 4.8 if it is in Ω; n/a if the lead was open. Nothing is rescaled for you\n")]
    [InlineData("site\tpair\tkohm\ncheek\ta-b\t4,8\n", "error: r.tsv, line 2: '4,8' is not a number in kΩ\nhint: decimals have a dot: 4.8\n")]
    public async Task WrongReadingsEndWith2(string table, string error)
    {
        CommandRun run = await Run(table, withSetup: true);

        Assert.Equal((ExitCode.Usage, error, string.Empty), (run.Code, run.Error, run.Output));
    }

    [Fact]
    public async Task AMissingTableEndsWith2()
    {
        CommandRun run = await CommandRun.Of("impedance", Path.Combine(_folder.Folder, "none.tsv"));
        CommandRun folder = await CommandRun.Of("impedance", _folder.Folder);

        Assert.Equal(
            (ExitCode.Usage, "error: none.tsv: cannot be read: it does not exist\nhint: check the name of the table of impedance readings and that you may read it\n"),
            (run.Code, run.Error));
        Assert.Equal(ExitCode.Usage, folder.Code);
        Assert.EndsWith(": is a folder, not a file\nhint: give the file inside the folder\n", folder.Error, StringComparison.Ordinal);
    }

    private Task<CommandRun> Run(string table, bool withSetup)
    {
        string readings = _folder.Write("r.tsv", table);
        return withSetup
            ? CommandRun.Of("impedance", readings, "--setup", _folder.Write("setup.toml", Setup))
            : CommandRun.Of("impedance", readings);
    }
}
