using ChannelAudit.Cli.Tests.Demo;
using ChannelAudit.Reports.Comparing;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

/// <summary><c>compare</c> and <c>export bids</c> on audits that the product's own engine made.</summary>
public sealed class CompareCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task WhatALimitChangedIsSaidWithReasonNumberAndBothLimits()
    {
        await Screen("plain");
        await Screen("lab", "[line-noise]\nquestionable = []\nreject = [{ line_rms = 9000.0 }]\nchannel_questionable = []\nchannel_reject = []\n");

        CommandRun run = await CommandRun.Of("compare", _folder.In("plain"), _folder.In("lab"), "--out", _folder.In("changes.tsv"));
        string[] rows = await File.ReadAllLinesAsync(_folder.In("changes.tsv"));

        Assert.Equal((ExitCode.Reached, string.Empty), (run.Code, run.Error));
        Assert.Contains("line-noise, reject: line_rms \u2265 5 \u00B5V and line_ratio \u2265 0 dB -> line_rms \u2265 9000 \u00B5V\n", run.Output, StringComparison.Ordinal);
        Assert.Matches("all 2 trials of EMG 1: reject -> [a-z]+;.* no longer line-noise; line_rms [0-9.]+( to [0-9.]+)? \u00B5V: limit 5 -> 9000\n", run.Output);
        Assert.Equal(string.Join('\t', ChangesTsv.Columns), rows[0]);
        Assert.Equal(4, rows.Length);
        Assert.Equal(["all", "1", "2"], rows.Skip(1).Select(row => row.Split('\t')[3]), StringComparer.Ordinal);
        Assert.False(File.Exists(_folder.In("changes.tsv.channelaudit-partial")));
    }

    [Fact]
    public async Task TheSameAuditTwiceEndsWith0()
    {
        await Screen("plain");

        CommandRun run = await CommandRun.Of("compare", _folder.In("plain"), _folder.In("plain"));
        CommandRun table = await CommandRun.Of("compare", _folder.In("plain"), _folder.In("plain"), "--out", "-");

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.EndsWith("No difference in recordings, verdicts or reasons.\n", run.Output, StringComparison.Ordinal);
        Assert.Equal(new CommandRun(ExitCode.Done, string.Join('\t', ChangesTsv.Columns) + "\n", string.Empty), table);
    }

    [Fact]
    public async Task WhatIsNoAuditOrNoPlaceForATableIsOneErrorAndOneHint()
    {
        await Screen("plain");
        _folder.Write("kept.tsv", "mine");
        string plain = _folder.In("plain");

        CommandRun noAudit = await CommandRun.Of("compare", plain, _folder.Folder);
        CommandRun taken = await CommandRun.Of("compare", plain, plain, "--out", _folder.In("kept.tsv"));
        CommandRun one = await CommandRun.Of("compare", plain);
        File.Delete(_folder.In("plain/recordings/rows/result.json"));
        CommandRun gone = await CommandRun.Of("compare", plain, plain, "--out", _folder.In("none.tsv"));

        Assert.Equal(
            $"error: {_folder.Folder}: not an audit: there is no audit.json of channelaudit in it\nhint: give the folder that screen wrote with --out\n", noAudit.Error);
        Assert.StartsWith($"error: {_folder.In("kept.tsv")}: is there already and stays as it is\n", taken.Error, StringComparison.Ordinal);
        Assert.StartsWith("error: channelaudit compare: B is missing\nhint: ", one.Error, StringComparison.Ordinal);
        Assert.Contains("/recordings/rows/result.json: listed in audit.json, but not there\nhint: ", gone.Error, StringComparison.Ordinal);
        Assert.All(new[] { noAudit, taken, one, gone }, run => Assert.Equal((ExitCode.Usage, string.Empty), (run.Code, run.Output)));
        Assert.Equal("mine", await File.ReadAllTextAsync(_folder.In("kept.tsv")));
        Assert.Empty(Directory.GetFiles(_folder.Folder, "none.tsv*"));
    }

    [Fact]
    public async Task AnAuditIsExportedAndRawDataIsLeftAlone()
    {
        await Screen("plain");
        _folder.Write("raw/dataset_description.json", "{}");

        CommandRun run = await CommandRun.Of("export", "bids", _folder.In("plain"), "--to", _folder.In("out"));
        CommandRun again = await CommandRun.Of("export", "bids", _folder.In("plain"), "--to", _folder.In("out"));
        CommandRun raw = await CommandRun.Of("export", "bids", _folder.In("plain"), "--to", _folder.In("raw/sub-1"));
        CommandRun nowhere = await CommandRun.Of("export", "bids", _folder.In("plain"));

        Assert.Equal(new CommandRun(ExitCode.Done, $"Written to {_folder.In("out")}: 1 recording, 6 files\n", string.Empty), run);
        Assert.Equal(run, again);
        Assert.True(File.Exists(_folder.In("out/sub-rows/emg/sub-rows_task-unnamed_desc-quality_events.tsv")));
        Assert.StartsWith($"error: {_folder.In("raw/sub-1")}: in the raw data set {_folder.In("raw")}, which is never written into\nhint: ", raw.Error, StringComparison.Ordinal);
        Assert.StartsWith("error: channelaudit export bids: --to is missing\nhint: write --to OUT", nowhere.Error, StringComparison.Ordinal);
        Assert.Equal((ExitCode.Usage, ExitCode.Usage), (raw.Code, nowhere.Code));
    }

    // Two trials of a muscle that is buried in mains: 40 uV at 50 Hz over a fixed jumble.
    private async Task Screen(string name, string? criteria = null)
    {
        _folder.Write("study/rows_events.tsv", "onset\tduration\ttrial_type\n0\t2\tlook\n2\t2\tlook\n");
        _folder.Write("study/rows.csv", "time,EMG 1\n" + string.Concat(Enumerable.Range(0, 4000)
            .Select(i => FormattableString.Invariant($"{i / 1000.0:0.000},{(40 * Math.Sin(2 * Math.PI * 50 * i / 1000)) + (i * 7919 % 1009 / 100.0):0.000}\n"))));
        string[] limits = criteria is null ? [] : ["--criteria", _folder.Write(name + ".toml", criteria)];
        CommandRun run = await DemoRun.Run(["screen", _folder.In("study"), "--figures", "none", "--out", _folder.In(name), .. limits]);
        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
    }
}
