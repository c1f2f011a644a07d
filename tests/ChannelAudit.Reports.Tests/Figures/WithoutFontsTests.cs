using System.Diagnostics;
using ChannelAudit.TestKit;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class WithoutFontsTests
{
    [SkippableFact]
    public void PicturesHaveTheSameBytesOnAMachineWithoutFonts()
    {
        string script = Path.GetFullPath(RepositoryRoot.Fixture("../.ci/without-fonts"));
        Skip.IfNot(OperatingSystem.IsLinux(), "hiding the fonts of the machine needs Linux");
        Skip.If(Run(script, ["true"]).ExitCode != 0, "hiding the fonts of the machine needs user namespaces");

        (int exitCode, string output) = Run(script, ["dotnet", typeof(FigureHashes).Assembly.Location]);

        Assert.Equal(0, exitCode);
        // The first line shows that the fonts were really hidden.
        Assert.Equal("0\n" + FigureHashes.Of(), output.Trim());
    }

    private static (int ExitCode, string Output) Run(string script, IEnumerable<string> arguments)
    {
        ProcessStartInfo start = new("/bin/sh", [script, .. arguments]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, errors.Result.Length > 0 && process.ExitCode != 0 ? errors.Result : output);
    }
}
