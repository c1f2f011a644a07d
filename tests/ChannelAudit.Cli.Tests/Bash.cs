using System.Diagnostics;
using Xunit;

namespace ChannelAudit.Cli.Tests;

/// <summary>Runs scripts in bash, with the built program on the path. Where there is no bash, the test is skipped and says so.</summary>
internal static class Bash
{
    private const int LongestMs = 120_000;

    /// <summary>Runs a script; a failing command in it does not end it.</summary>
    /// <param name="script">What bash reads.</param>
    /// <param name="folder">Where it starts.</param>
    /// <param name="environment">Variables over those of this process.</param>
    public static CommandRun Run(string script, string folder, params (string Name, string Value)[] environment)
    {
        Skip.IfNot(IsThere(), "needs bash");
        ProcessStartInfo start = new("bash", ["--noprofile", "--norc", "-s"])
        {
            UseShellExecute = false,
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["PATH"] = AppContext.BaseDirectory + Path.PathSeparator + start.Environment["PATH"];
        foreach ((string name, string value) in environment)
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        process.StandardInput.Write(script);
        process.StandardInput.Close();
        Assert.True(process.WaitForExit(LongestMs), "bash did not come to an end");
        return new CommandRun(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
    }

    private static bool IsThere() => !OperatingSystem.IsWindows()
        && (Environment.GetEnvironmentVariable("PATH") ?? string.Empty).Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, "bash")));
}
