using System.Diagnostics;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Review.Tests.Browser;

/// <summary>A whole review in headless Chromium; skipped where it, node or the packages of <c>fixtures/browser</c> are not installed. It times the pictures, so that no other test may run beside it.</summary>
[Collection(Alone.Name)]
public sealed class ReviewInBrowserTests
{
    private const string Node = "/usr/bin/node";

    [SkippableFact]
    public void FiftyCellsOfARecordingOfFifteenMinutesByKeyboardAlone()
    {
        Skip.IfNot(
            File.Exists(Node) && File.Exists(Environment.GetEnvironmentVariable("CHANNELAUDIT_CHROMIUM") ?? "/usr/bin/chromium")
                && Directory.Exists(RepositoryRoot.Fixture("browser/node_modules/playwright-core")),
            "chromium, node or the packages of fixtures/browser are not installed (npm ci)");
        using LongReviewFolder folder = new(recordings: 1);
        string program = Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "channelaudit-review.exe" : "channelaudit-review");
        ProcessStartInfo start = new(Node, [RepositoryRoot.Fixture("browser/review.mjs"), program, folder.Audit, folder.Data])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };

        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();

        Assert.True(process.ExitCode == 0, text + errors.GetAwaiter().GetResult());
    }
}
