using System.Diagnostics;
using ChannelAudit.TestKit;

namespace ChannelAudit.Reports.Tests.Output;

/// <summary>The tables as pandas and R read them, two general-purpose readers; skipped where they are not installed.</summary>
public sealed class ExternalReadersTests
{
    [SkippableTheory]
    [InlineData("/usr/bin/python3", "-c", "import pandas", "check_tables.py")]
    [InlineData("/usr/bin/Rscript", "-e", "invisible(1)", "check_tables.R")]
    public void EveryColumnHasItsType(string program, string option, string probe, string script)
    {
        Skip.IfNot(File.Exists(program) && Run(program, [option, probe]).Code == 0, $"{program} with its tables package is not installed");
        using TemporaryFolder folder = new();
        SampleRun run = SampleResults.Run([.. SampleResults.Run().Recordings, SampleResults.Hostile()]);
        run.Write(folder.Path, figures: null, CancellationToken.None);

        (int code, string text) = Run(program, [RepositoryRoot.Fixture($"oracles/{script}"), folder.Path]);

        Assert.True(code == 0, text);
        Assert.Contains("verdicts.tsv", text, StringComparison.Ordinal);
    }

    private static (int Code, string Text) Run(string program, string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + errors.GetAwaiter().GetResult());
    }
}
