using System.Diagnostics;
using System.Globalization;
using ChannelAudit.Reports.Pages;
using ChannelAudit.TestKit;
using TemporaryFolder = ChannelAudit.Reports.Tests.Output.TemporaryFolder;

namespace ChannelAudit.Reports.Tests.Browser;

/// <summary>The pages in headless Chromium; skipped where it, node or the packages of <c>fixtures/browser</c> are not installed.</summary>
public sealed class ReportInBrowserTests
{
    private const string Node = "/usr/bin/node";

    [SkippableFact]
    public void AReaderComesFromTheOverviewToTheEvidenceOfACellInTwoClicks()
    {
        SkipWithoutBrowser();
        using TemporaryFolder folder = new();
        SampleRun run = SampleResults.Run([.. SampleResults.Run().Recordings, SampleResults.Hostile(), LargeSamples.Bad(trials: 40)]);
        run.Write(folder.Path, figures: null, CancellationToken.None);

        (int code, string text) = Run("walk.mjs", folder.Path);

        Assert.True(code == 0, text);
        Assert.Contains("5 recordings", text, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void AThousandRecordingsAreSeenWithinTwoSeconds()
    {
        SkipWithoutBrowser();
        using TemporaryFolder folder = new();
        string page = Path.Combine(folder.Path, "report.html");
        File.WriteAllBytes(page, ReportPage.OfStudy(SampleResults.Run().Audit, LargeSamples.Study(recordings: 1000)));

        (int code, string text) = Run("first-view.mjs", page);

        Assert.True(code == 0, text);
        Assert.True(int.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture) < 2000, text);
    }

    private static void SkipWithoutBrowser() => Skip.IfNot(
        File.Exists(Node) && File.Exists(Environment.GetEnvironmentVariable("CHANNELAUDIT_CHROMIUM") ?? "/usr/bin/chromium")
            && Directory.Exists(RepositoryRoot.Fixture("browser/node_modules/playwright-core")),
        "chromium, node or the packages of fixtures/browser are not installed (npm ci)");

    private static (int Code, string Text) Run(string script, string argument)
    {
        ProcessStartInfo start = new(Node, [RepositoryRoot.Fixture($"browser/{script}"), argument])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + errors.GetAwaiter().GetResult());
    }
}
