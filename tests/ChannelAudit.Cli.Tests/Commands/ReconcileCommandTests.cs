using ChannelAudit.Cli.Tests.Demo;
using ChannelAudit.Reports.Reconciling;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

/// <summary><c>reconcile</c> on an audit that the product's own engine made.</summary>
public sealed class ReconcileCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task AListThatFitsEndsWith0AndOneThatDoesNotWith1()
    {
        await Screen();
        string fits = _folder.Write("fits.csv", "Recording;Channel;Trial;Reason\r\nrows.csv;emg 1;;mains\r\n");
        string differs = _folder.Write("differs.tsv", "recording\tchannel\ttrial\nrows\tEMG 1\t1.0\nrow\tn/a\tn/a\n");

        CommandRun same = await CommandRun.Of("reconcile", _folder.In("audit"), fits, "--out", _folder.In("answers.tsv"));
        CommandRun other = await CommandRun.Of("reconcile", _folder.In("audit"), differs);
        CommandRun table = await CommandRun.Of("reconcile", _folder.In("audit"), fits, "--out", "-");

        Assert.Equal((ExitCode.Done, string.Empty), (same.Code, same.Error));
        Assert.Contains("No difference: every line is supported", same.Output, StringComparison.Ordinal);
        Assert.Equal((ExitCode.Reached, string.Empty), (other.Code, other.Error));
        Assert.Contains("the audit has no recording \"row\"; did you mean \"rows\"?", other.Output, StringComparison.Ordinal);
        Assert.Contains("  rejected but kept     1 channel, 1 trial\n", other.Output, StringComparison.Ordinal);
        Assert.Equal(await File.ReadAllTextAsync(_folder.In("answers.tsv")), table.Output);
        Assert.StartsWith(string.Join('\t', ReconcileTsv.Columns) + "\n2\trows\tEMG 1\tall\tn/a\tsupported\treject\tmains\treject\treject\t", table.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AnInterruptLeavesNothingAndSaysNothingOfAnOutputFolder()
    {
        await Screen();
        string list = _folder.Write("list.tsv", "recording\tchannel\ttrial\nrows\tn/a\tn/a\n");
        using CancellationTokenSource source = new();
        await source.CancelAsync();

        CommandRun run = await CommandRun.With(null, source.Token, "reconcile", _folder.In("audit"), list, "--out", _folder.In("answers.tsv"));

        Assert.Equal((ExitCode.Interrupted, "error: interrupted\nhint: nothing was left half done; run the same command again\n"), (run.Code, run.Error));
        Assert.Empty(Directory.GetFiles(_folder.Folder, "answers.tsv*"));
    }

    [Fact]
    public async Task WrongUsageIsOneErrorAndOneHintAndNothingIsWrittenOver()
    {
        await Screen();
        string list = _folder.Write("list.tsv", "recording\tchannel\ttrial\nrows\tn/a\tn/a\n");
        string kept = _folder.Write("kept.tsv", "mine");

        CommandRun noAudit = await CommandRun.Of("reconcile", _folder.Folder, list);
        CommandRun noList = await CommandRun.Of("reconcile", _folder.In("audit"), _folder.In("none.tsv"));
        CommandRun taken = await CommandRun.Of("reconcile", _folder.In("audit"), list, "--out", kept);
        CommandRun one = await CommandRun.Of("reconcile", _folder.In("audit"));

        Assert.All(new[] { noAudit, noList, taken, one }, run => Assert.Equal((ExitCode.Usage, string.Empty), (run.Code, run.Output)));
        Assert.All(new[] { noAudit, noList, taken, one }, run => Assert.Matches("^error: [^\n]+\nhint: [^\n]+\n$", run.Error));
        Assert.StartsWith("error: none.tsv: cannot be read: it does not exist\n", noList.Error, StringComparison.Ordinal);
        Assert.Equal("mine", await File.ReadAllTextAsync(kept));
    }

    // Two trials of a muscle that is buried in mains: 40 uV at 50 Hz over a fixed jumble.
    private async Task Screen()
    {
        _folder.Write("study/rows_events.tsv", "onset\tduration\ttrial_type\n0\t2\tlook\n2\t2\tlook\n");
        _folder.Write("study/rows.csv", "time,EMG 1\n" + string.Concat(Enumerable.Range(0, 4000)
            .Select(i => FormattableString.Invariant($"{i / 1000.0:0.000},{(40 * Math.Sin(2 * Math.PI * 50 * i / 1000)) + (i * 7919 % 1009 / 100.0):0.000}\n"))));
        CommandRun run = await DemoRun.Run("screen", _folder.In("study"), "--figures", "none", "--out", _folder.In("audit"));
        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
    }
}
