using System.ComponentModel;
using System.Diagnostics;
using System.Runtime.InteropServices;

namespace ChannelAudit.Cli;

/// <summary>The program that serves the review page; it lies beside this one.</summary>
internal static class ReviewProgram
{
    private const string Name = "channelaudit-review";

    /// <summary>Where it lies.</summary>
    public static string Path { get; } = System.IO.Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? Name + ".exe" : Name);

    /// <summary>Runs it on this terminal until it ends; it ends with this program, however that ends.</summary>
    /// <param name="words">What it is told.</param>
    /// <param name="cancel">Asks it to end, as Ctrl-C does.</param>
    /// <returns>Its exit code.</returns>
    /// <exception cref="ChannelAuditException">When it is not there, or cannot be started.</exception>
    public static async Task<int> Run(IEnumerable<string> words, CancellationToken cancel)
    {
        if (!File.Exists(Path))
        {
            throw UsageErrors.NoReviewProgram(Path);
        }

        // It follows its input, which is a pipe from here: when the pipe ends, it ends, and says its last words.
        ProcessStartInfo start = new(Path, words) { UseShellExecute = false, RedirectStandardInput = true };
        if (Environment.GetEnvironmentVariable("DOTNET_ROOT") is null && FrameworkRoot() is { } root)
        {
            start.Environment["DOTNET_ROOT"] = root;
        }

        using Process process = Started(start);
        await using CancellationTokenRegistration ending = cancel.Register(process.StandardInput.Close);
        await process.WaitForExitAsync(CancellationToken.None);
        return process.ExitCode;
    }

    private static Process Started(ProcessStartInfo start)
    {
        try
        {
            return Process.Start(start) ?? throw UsageErrors.NoReviewProgram(Path);
        }
        catch (Win32Exception)
        {
            throw UsageErrors.NoReviewProgram(Path);
        }
    }

    // This program runs on a framework already; the other one shall find the same.
    private static string? FrameworkRoot()
    {
        DirectoryInfo? shared = Directory.GetParent(RuntimeEnvironment.GetRuntimeDirectory().TrimEnd(System.IO.Path.DirectorySeparatorChar))?.Parent;
        return shared is { Name: "shared", Parent: { } root } ? root.FullName : null;
    }
}
