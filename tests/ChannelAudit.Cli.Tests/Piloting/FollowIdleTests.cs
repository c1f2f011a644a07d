using System.Diagnostics;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Piloting;

/// <summary>Following in a process of its own: while nothing comes it does nothing.</summary>
public sealed class FollowIdleTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task WaitingForARecordingTakesNoProcessorTime()
    {
        using Process program = Start("pilot", _folder.In("live.edf"), "--out", _folder.In("out"), "--follow");
        try
        {
            string? said = await program.StandardOutput.ReadLineAsync();
            Assert.StartsWith("waiting for ", said, StringComparison.Ordinal);
            TimeSpan before = program.TotalProcessorTime;

            using CancellationTokenSource pause = new(TimeSpan.FromSeconds(3));
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => program.WaitForExitAsync(pause.Token));

            program.Refresh();
            TimeSpan spent = program.TotalProcessorTime - before;
            Assert.True(spent < TimeSpan.FromSeconds(0.5), FormattableString.Invariant($"{spent.TotalSeconds:0.00} s of CPU in 3 s of waiting"));
        }
        finally
        {
            program.Kill();
            await program.WaitForExitAsync();
        }
    }

    private static Process Start(params string[] arguments)
    {
        ProcessStartInfo start = new("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "channelaudit.dll"));
        foreach (string argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        return Process.Start(start)!;
    }
}
