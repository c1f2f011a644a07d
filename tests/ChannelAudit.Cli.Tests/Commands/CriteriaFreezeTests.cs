using System.Text.Json;
using ChannelAudit.Cli.Commands;
using ChannelAudit.Cli.Tests.Demo;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

/// <summary><c>criteria freeze</c> and <c>criteria compare</c>, and what audits say of the file.</summary>
public sealed class CriteriaFreezeTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task ADatedFileAndAParagraphComeOutTheSameEachTime()
    {
        string lab = _folder.Write("lab.toml", "[line-noise]\nreject = [{ line_rms = 8, line_ratio = 3 }]\n");

        CommandRun run = await CommandRun.Of("criteria", "freeze", lab, "--date", "2026-03-01", "--out", _folder.In("frozen.toml"));
        CommandRun printed = await CommandRun.Of("criteria", "freeze", lab, "--date", "2026-03-01", "--out", "-");
        CommandRun check = await CommandRun.Of("criteria", "check", _folder.In("frozen.toml"));

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.Equal(await File.ReadAllTextAsync(_folder.In("frozen.toml")), printed.Output);
        Assert.Contains("frozen on 2026-03-01 in the file frozen.toml; their SHA-256 is `", run.Output, StringComparison.Ordinal);
        Assert.Contains("Reject: line_rms \u2265 8 \u00B5V and line_ratio \u2265 3 dB;", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("frozen.toml, as frozen on 2026-03-01, unchanged\n", check.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WithoutADateTheClockSaysIt()
    {
        using StringWriter output = new();
        using CommandContext context = new(output, TextWriter.Null, new RecordedEngine()) { Clock = new FixedDay() };

        Assert.Equal(ExitCode.Done, await CommandLine.RunAsync(["criteria", "freeze", "--out", "-"], context, CancellationToken.None));

        Assert.Contains("\n[frozen]\ndate = 2031-05-04\n", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task EveryAuditSaysWhetherItsLimitsAreThoseThatWereFrozen()
    {
        await CommandRun.Of("criteria", "freeze", "--date", "2026-03-01", "--out", _folder.In("frozen.toml"));
        string text = await File.ReadAllTextAsync(_folder.In("frozen.toml"));
        int first = text.IndexOf("clipped_run = 10.0", StringComparison.Ordinal);
        _folder.Write("edited.toml", text[..first] + "clipped_run = 11.0" + text[(first + "clipped_run = 10.0".Length)..]);
        _folder.Write("lab.toml", "[line-noise]\nreject = []\n");

        string unchanged = await Screen("a", "frozen.toml");
        string edited = await Screen("a", "edited.toml");
        string loose = await Screen("a", "lab.toml");
        string[] methods = [.. new[] { "frozen.toml", "edited.toml", "lab.toml" }.Select(name => File.ReadAllText(_folder.In($"a-{name}/methods-paragraph.md")))];
        string[] pages = [.. new[] { "frozen.toml", "edited.toml", "lab.toml" }.Select(name => File.ReadAllText(_folder.In($"a-{name}/report.html")))];

        Assert.Contains("Limits: frozen.toml, as frozen on 2026-03-01, unchanged.\n", unchanged, StringComparison.Ordinal);
        Assert.Contains("Limits: edited.toml, frozen on 2026-03-01 and changed since (1 difference).\n", edited, StringComparison.Ordinal);
        Assert.Contains("-> [{ clipped = 1.0 }, { clipped_run = 11.0 }]", edited.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("Limits: lab.toml, not frozen.\n", loose, StringComparison.Ordinal);
        Assert.Contains("limits as frozen on 2026-03-01, unchanged", methods[0], StringComparison.Ordinal);
        Assert.Contains("frozen on 2026-03-01 and changed since", methods[1], StringComparison.Ordinal);
        Assert.Contains("not frozen beforehand", methods[2], StringComparison.Ordinal);
        Assert.Contains("frozen.toml, as frozen on 2026-03-01, unchanged", pages[0], StringComparison.Ordinal);
        Assert.Contains("clipped_run = 11.0", pages[1], StringComparison.Ordinal);
        Assert.Contains("lab.toml, not frozen", pages[2], StringComparison.Ordinal);
        Assert.Equal((true, false, JsonValueKind.Null), (Frozen("frozen.toml").GetProperty("unchanged").GetBoolean(), Frozen("edited.toml").GetProperty("unchanged").GetBoolean(), Frozen("lab.toml").ValueKind));
    }

    [Fact]
    public async Task TwoFilesAreHeldAgainstEachOther()
    {
        await CommandRun.Of("criteria", "freeze", "--date", "2026-03-01", "--out", _folder.In("frozen.toml"));
        string lab = _folder.Write("lab.toml", "[clipping]\nreject = [{ clipped = 2 }]\n");

        CommandRun other = await CommandRun.Of("criteria", "compare", _folder.In("frozen.toml"), lab);
        CommandRun same = await CommandRun.Of("criteria", "compare", _folder.In("frozen.toml"), _folder.In("frozen.toml"));

        Assert.Equal((ExitCode.Reached, ExitCode.Done), (other.Code, same.Code));
        Assert.StartsWith("A: frozen.toml, as frozen on 2026-03-01, unchanged; SHA-256", other.Output, StringComparison.Ordinal);
        Assert.Contains("B: lab.toml, not frozen; SHA-256", other.Output, StringComparison.Ordinal);
        Assert.EndsWith("  [clipping] reject: [{ clipped = 1.0 }, { clipped_run = 10.0 }] -> [{ clipped = 2.0 }]\n", other.Output, StringComparison.Ordinal);
        Assert.EndsWith("The limits are the same.\n", same.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--date '1 May' is no day", "--date", "1 May", "--out", "-")]
    [InlineData("--out is missing", "--date", "2026-03-01")]
    public async Task WrongUsageEndsWith2(string what, params string[] words)
    {
        CommandRun run = await CommandRun.Of(["criteria", "freeze", .. words]);

        Assert.Equal((ExitCode.Usage, string.Empty), (run.Code, run.Output));
        Assert.Contains(what.Split(' ')[0], run.Error, StringComparison.Ordinal);
        Assert.Contains("\nhint: ", run.Error, StringComparison.Ordinal);
    }

    private JsonElement Frozen(string criteria)
    {
        using JsonDocument audit = JsonDocument.Parse(File.ReadAllText(_folder.In($"a-{criteria}/audit.json")));
        return audit.RootElement.GetProperty("criteria").GetProperty("frozen").Clone();
    }

    private async Task<string> Screen(string name, string criteria)
    {
        string data = _folder.Write("rows.csv", "time,EMG 1\n" + string.Concat(Enumerable.Range(0, 4000)
            .Select(i => FormattableString.Invariant($"{i / 1000.0:0.000},{i * 7919 % 1009 / 100.0:0.000}\n"))));
        CommandRun run = await DemoRun.Run("screen", data, "--figures", "none", "--criteria", _folder.In(criteria), "--out", _folder.In($"{name}-{criteria}"));
        Assert.Equal(string.Empty, run.Error);
        return run.Output;
    }

    private sealed class FixedDay : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(2031, 5, 4, 12, 0, 0, TimeSpan.Zero);
    }
}
