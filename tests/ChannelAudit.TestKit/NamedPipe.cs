using System.Diagnostics;

namespace ChannelAudit.TestKit;

/// <summary>Makes named pipes, which nobody writes to: whoever opens one waits.</summary>
public static class NamedPipe
{
    /// <summary>Whether the system has them as files.</summary>
    public static bool CanBeMade => !OperatingSystem.IsWindows();

    /// <summary>Makes one.</summary>
    /// <param name="path">Where.</param>
    /// <returns>The path.</returns>
    public static string Make(string path)
    {
        using Process mkfifo = Process.Start("mkfifo", [path]);
        mkfifo.WaitForExit();
        return mkfifo.ExitCode == 0 ? path : throw new InvalidOperationException("mkfifo failed");
    }
}
