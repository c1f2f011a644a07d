using System.Globalization;
using ChannelAudit.Cli.Tests.Demo;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

/// <summary><c>trend</c> on audits that the product's own engine made: a recording a week, and mains that comes in the middle.</summary>
public sealed class TrendCommandTests : IDisposable
{
    private const string Sites = "[[sites]]\nname = \"cheek\"\nchannel = \"EMG 1\"\nelectrodes = [\"C1\", \"C2\"]\n[participants]\npath = \"{date}_*\"\n";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task MainsThatComesIsToldWithTablesPageAndPictures()
    {
        await Screen("early", 0, 20, Sites);
        await Screen("late", 20, 40, Sites);

        CommandRun run = await CommandRun.Of("trend", _folder.In("early-audit"), _folder.In("late-audit"), "--out", _folder.In("out"));

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.StartsWith("40 recordings in 2 audits, 2024-01-01 to 2024-09-30.\n", run.Output, StringComparison.Ordinal);
        Assert.Matches("1\\. All recordings \\(or site cheek, electrode C1 and electrode C2[^\n]*: [^\n]*mains [0-9.]+ times as high since May 2024[^\n]*: look for what was switched on", run.Output);
        Assert.Equal(
            ["trend-findings.tsv", "trend-story-1.png", "trend.html", "trend.png", "trend.tsv"],
            Directory.GetFiles(_folder.In("out")).Select(Path.GetFileName).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        string page = await File.ReadAllTextAsync(_folder.In("out/trend.html"));
        Assert.Contains("default-src 'none'", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task TheSameAuditsGiveTheSameBytesAndARecordingInTwoAuditsCountsOnce()
    {
        await Screen("one", 0, 6, Sites);
        await CommandRun.Of("trend", _folder.In("one-audit"), "--out", _folder.In("out"));
        Dictionary<string, string> first = Bytes();
        _folder.Write("out/trend-story-7.png", "of an earlier run");
        _folder.Write("out/.trend.html.4711.channelaudit-partial", "of a run that died");

        CommandRun again = await CommandRun.Of("trend", _folder.In("one-audit"), "--out", _folder.In("out"));
        Dictionary<string, string> second = Bytes();
        Directory.CreateDirectory(_folder.In("both"));
        Directory.Move(_folder.In("one-audit"), _folder.In("both/a"));
        await Screen("one", 0, 6, Sites);
        Directory.Move(_folder.In("one-audit"), _folder.In("both/b"));
        CommandRun both = await CommandRun.Of("trend", _folder.In("both"), "--out", _folder.In("other"));

        Assert.Equal(ExitCode.Done, again.Code);
        Assert.Equal(first, second);
        Assert.Contains("6 recordings left out: the same bytes under the same id stand in another audit.\n", both.Output, StringComparison.Ordinal);
        Assert.Contains("No change found.\n", both.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task PeopleAppearOnlyWhereTheSetupSaysSo()
    {
        const string technicians = Sites + "[recording]\ntechnician = \"T-7\"\n[[recordings]]\nmatch = \"202401*\"\ntechnician = \"T-3\"\n";
        await Screen("silent", 0, 30, technicians);
        await Screen("open", 0, 30, technicians + "[trend]\npeople = true\n");

        CommandRun silent = await CommandRun.Of("trend", _folder.In("silent-audit"), "--own", "T-3", "--out", _folder.In("silent-out"));
        CommandRun unknown = await CommandRun.Of("trend", _folder.In("open-audit"), "--own", "T-9", "--out", _folder.In("unknown-out"));
        CommandRun open = await CommandRun.Of("trend", _folder.In("open-audit"), "--own", "T-3", "--out", _folder.In("out"));
        CommandRun without = await CommandRun.Of("trend", _folder.In("open-audit"), "--out", _folder.In("without"));

        Assert.Equal(ExitCode.Usage, silent.Code);
        Assert.Contains("no setup of these audits says that people may be shown", silent.Error, StringComparison.Ordinal);
        Assert.Contains("--own T-9: no recording names this technician", unknown.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("T-7", unknown.Error, StringComparison.Ordinal);
        Assert.Contains("Set-ups of T-3 beside the lab's usual range:\n  ", open.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("T-7", open.Output + await File.ReadAllTextAsync(_folder.In("out/trend.html")), StringComparison.Ordinal);
        Assert.DoesNotContain("T-3", without.Output + await File.ReadAllTextAsync(_folder.In("without/trend.html")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task WrongUsageIsOneErrorAndOneHintAndNothingIsWritten()
    {
        await Screen("undated", 0, 2, "[[sites]]\nname = \"cheek\"\nchannel = \"EMG 1\"\n");
        _folder.Write("full/kept.txt", "mine");
        Directory.CreateDirectory(_folder.In("empty"));

        CommandRun[] runs =
        [
            await CommandRun.Of("trend", _folder.In("nowhere"), "--out", _folder.In("x")), await CommandRun.Of("trend", _folder.In("empty"), "--out", _folder.In("x")),
            await CommandRun.Of("trend", _folder.In("undated-audit"), "--out", _folder.In("x")), await CommandRun.Of("trend", _folder.In("undated-audit"), "--out", _folder.In("full")),
            await CommandRun.Of("trend"),
        ];

        Assert.All(runs, run => Assert.Equal((ExitCode.Usage, string.Empty), (run.Code, run.Output)));
        Assert.All(runs, run => Assert.Matches("^error: [^\n]+\nhint: [^\n]+\n$", run.Error));
        Assert.Contains("none of 2 recordings has a day", runs[2].Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_folder.In("x")));
        Assert.Single(Directory.GetFiles(_folder.In("full")));
    }

    private Dictionary<string, string> Bytes() =>
        Directory.GetFiles(_folder.In("out")).ToDictionary(file => Path.GetFileName(file), file => Convert.ToHexString(File.ReadAllBytes(file)), StringComparer.Ordinal);

    // Two seconds a recording over a jumble of its own; from the twentieth on the mains is ten times as high.
    private async Task Screen(string name, int from, int to, string setup)
    {
        for (int week = from; week < to; week++)
        {
            string day = new DateOnly(2024, 1, 1).AddDays(7 * week).ToString("yyyyMMdd", CultureInfo.InvariantCulture);
            double mains = (week < 20 ? 4 : 40) * (1 + (week * 37 % 11 / 50.0));
            int step = 7901 + (2 * week);
            _folder.Write($"{name}/{day}_{week.ToString(CultureInfo.InvariantCulture)}.csv", "time,EMG 1\n" + string.Concat(Enumerable.Range(0, 2000).Select(i => FormattableString.Invariant(
                $"{i / 1000.0:0.000},{(mains * Math.Sin(2 * Math.PI * 50 * i / 1000)) + (i * step % 1009 / 100.0):0.000}\n"))));
        }

        CommandRun run = await DemoRun.Run("screen", _folder.In(name), "--setup", _folder.Write($"{name}.toml", setup), "--figures", "none", "--out", _folder.In(name + "-audit"));
        Assert.Equal(ExitCode.Done, run.Code);
    }
}
