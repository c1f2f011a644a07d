using System.Globalization;
using System.Security.Cryptography;
using ChannelAudit.Cli.Tests.Demo;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Deciding;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Cli.Tests.Verifying;

/// <summary>Two recordings of two channels buried in mains, audited with criteria, setup and readings, for tests that change one thing afterwards.</summary>
internal sealed class SmallStudy : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    /// <summary>The recordings.</summary>
    public string Data => In("study");

    /// <summary>The audit.</summary>
    public string Audit => In("audit");

    /// <summary>The options that name criteria, setup and readings.</summary>
    public string[] With { get; private set; } = [];

    /// <summary>Makes and audits it.</summary>
    public static async Task<SmallStudy> Make(params string[] more)
    {
        SmallStudy study = new();
        const string marks = "onset\tduration\ttrial_type\n0\t2\tlook\n2\t2\tlisten\n";
        study.Write("study/sub/a.csv", Samples(7907));
        study.Write("study/sub/a_events.tsv", marks);
        study.Write("study/b.csv", Samples(7901));
        study.Write("study/b_events.tsv", marks);
        study.With =
        [
            "--criteria", study.Write("lab.toml", "[clipping]\r\nquestionable = []  # \u00FCber alles\r\n"),
            "--setup", study.Write("setup.toml", "[[sites]]\nname = \"cheek\"\nchannel = \"EMG 1\"\n[[sites]]\nname = \"brow\"\nchannel = \"EMG 2\"\n"),
            "--impedance", study.Write("ohm.tsv", "recording\tsite\tpair\tkohm\nb\tcheek\ta-b\t12\n"),
        ];
        CommandRun run = await DemoRun.Run(["screen", study.Data, "--out", study.Audit, .. study.With, .. more.Length == 0 ? ["--figures", "none"] : more]);
        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        return study;
    }

    /// <summary>Two seconds of each of two conditions: 40 uV at 50 Hz over a fixed jumble.</summary>
    public static string Samples(int step) => "time,EMG 1,EMG 2\n" + string.Concat(Enumerable.Range(0, 4000).Select(i => string.Create(
        CultureInfo.InvariantCulture, $"{i / 1000.0:0.000},{(40 * Math.Sin(2 * Math.PI * 50 * i / 1000)) + (i * step % 1009 / 100.0):0.000},{i * step % 1013 / 90.0:0.000}\n")));

    /// <summary>A path in its folder.</summary>
    public string In(string relative) => _folder.In(relative);

    /// <summary>Writes a file.</summary>
    public string Write(string relative, string content) => _folder.Write(relative, content);

    /// <summary>Changes the first place where a text stands.</summary>
    public void Change(string file, string from, string to)
    {
        string text = File.ReadAllText(In(file));
        int place = text.IndexOf(from, StringComparison.Ordinal);
        Assert.True(place >= 0, $"{file} has no '{from}'");
        File.WriteAllText(In(file), string.Concat(text.AsSpan(0, place), to, text.AsSpan(place + from.Length)));
    }

    /// <summary>Puts the present hash of a file of the audit into <c>audit.json</c>, as somebody would who wants a change not to be seen.</summary>
    public void Cover(string file)
    {
        string audit = In("audit/audit.json");
        string[] lines = [.. File.ReadAllLines(audit)];
        int line = Array.FindIndex(lines, text => text.Contains($"\"path\":\"{file}\"", StringComparison.Ordinal));
        lines[line] = $"  {{\"path\":\"{file}\",\"sha256\":\"{Hash(In("audit/" + file))}\"}}" + (lines[line].EndsWith(',') ? "," : string.Empty);
        File.WriteAllText(audit, string.Join('\n', lines) + "\n");
    }

    /// <summary>Every file below a folder with its hash.</summary>
    public string[] State(string folder) =>
        [.. Directory.EnumerateFiles(In(folder), "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(file => $"{file} {Hash(file)}")];

    /// <summary>Decides about recording b.</summary>
    public async Task Decide(params string[] what)
    {
        CommandRun run = await DemoRun.Run(["decide", Audit, "--recording", "b", "--reason", "seen in the video", "--by", "A. Reader", .. what]);
        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
    }

    /// <summary>Decides about recording b as the review page does before it brings tables and pages up to date.</summary>
    public void DecideBehindItsTables() => DecisionDesk.Decide(
        DecisionDesk.Open(Audit, ProductVersion.Text),
        [new DecisionRequest("b", "cheek", 1, Grade.Pass, "seen in the video", "A. Reader")],
        "review",
        blind: false,
        TimeProvider.System,
        CancellationToken.None);

    /// <summary>Runs <c>verify</c> on its audit.</summary>
    public Task<CommandRun> Verify(params string[] more) => DemoRun.Run(["verify", Audit, .. more]);

    /// <inheritdoc/>
    public void Dispose() => _folder.Dispose();

    private static string Hash(string file) => Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(file)));
}
