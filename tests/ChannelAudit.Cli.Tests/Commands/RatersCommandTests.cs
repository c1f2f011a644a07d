using ChannelAudit.Cli.Tests.Demo;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

/// <summary><c>raters</c> on an audit that the product's own engine made.</summary>
public sealed class RatersCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task LabelsAreAnsweredWithTablesAndAPicture()
    {
        await Screen();
        string labels = _folder.Write("labels.csv", "Recording;Channel;Trial;Rater;Label\r\nrows.csv;emg 1;1,0;A;bad\r\nrows;EMG 1;2;A;good\r\nrow;EMG 1;2;A;good\r\n");

        CommandRun run = await CommandRun.Of("raters", _folder.In("audit"), labels, "--out", _folder.In("out"));

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.Contains("Labels: labels.csv, 3 labels of 1 rater\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("1 label could not be matched\n  line 4, A: the audit has no recording \"row\"; did you mean \"rows\"?\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("no limit is named: it takes 20 labels of each kind, here are 1 reject and 1 other", run.Output, StringComparison.Ordinal);
        Assert.Equal(
            ["agreement.tsv", "curves-trials.png", "curves.tsv", "detection.tsv", "limits.tsv"],
            Directory.GetFiles(_folder.In("out")).Select(Path.GetFileName).Order(StringComparer.Ordinal),
            StringComparer.Ordinal);
    }

    [Fact]
    public async Task WrongUsageIsOneErrorAndOneHintAndNothingIsWritten()
    {
        await Screen();
        string labels = _folder.Write("labels.tsv", "recording\tchannel\ttrial\trater\tlabel\nrows\tEMG 1\t1\tA\tbad\n");
        string other = _folder.Write("other.tsv", "recording\tchannel\ttrial\trater\tlabel\nelsewhere\tEMG 1\t1\tA\tbad\n");
        string bad = _folder.Write("bad.tsv", "recording\tchannel\ttrial\trater\tlabel\nrows\tEMG 1\t1\tA\tlovely\n");
        _folder.Write("full/kept.txt", "mine");

        CommandRun[] runs =
        [
            await CommandRun.Of("raters", _folder.Folder, labels), await CommandRun.Of("raters", _folder.In("audit"), other),
            await CommandRun.Of("raters", _folder.In("audit"), bad), await CommandRun.Of("raters", _folder.In("audit"), labels, "--out", _folder.In("full")),
            await CommandRun.Of("raters", _folder.In("audit")), await CommandRun.Of("raters", _folder.In("audit"), "--blind"),
        ];

        Assert.All(runs, run => Assert.Equal((ExitCode.Usage, string.Empty), (run.Code, run.Output)));
        Assert.All(runs, run => Assert.Matches("^error: [^\n]+\nhint: [^\n]+\n$", run.Error));
        Assert.StartsWith("error: other.tsv: no label is of anything in the audit; the first: the audit has no recording \"elsewhere\"\n", runs[1].Error, StringComparison.Ordinal);
        Assert.StartsWith($"error: {_folder.In("full")}: not empty\n", runs[3].Error, StringComparison.Ordinal);
        Assert.StartsWith("error: channelaudit raters: LABELS is missing\n", runs[4].Error, StringComparison.Ordinal);
        Assert.StartsWith($"error: {_folder.In("audit")}: there are no blind decisions in it\n", runs[5].Error, StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(_folder.In("full")));
    }

    // Two trials of a muscle that is buried in mains: 40 uV at 50 Hz over a fixed jumble; the second trial is without them.
    private async Task Screen()
    {
        _folder.Write("study/rows_events.tsv", "onset\tduration\ttrial_type\n0\t2\tlook\n2\t2\tlook\n");
        _folder.Write("study/rows.csv", "time,EMG 1\n" + string.Concat(Enumerable.Range(0, 4000)
            .Select(i => FormattableString.Invariant($"{i / 1000.0:0.000},{((i < 2000 ? 40 : 0) * Math.Sin(2 * Math.PI * 50 * i / 1000)) + (i * 7919 % 1009 / 100.0):0.000}\n"))));
        CommandRun run = await DemoRun.Run("screen", _folder.In("study"), "--figures", "none", "--out", _folder.In("audit"));
        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
    }
}
