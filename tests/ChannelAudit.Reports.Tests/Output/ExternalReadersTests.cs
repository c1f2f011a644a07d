using System.Diagnostics;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Bids;
using ChannelAudit.Reports.Comparing;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Results;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;

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

    [SkippableTheory]
    [InlineData("/usr/bin/python3", "-c", "import pandas", "check_tables.py")]
    [InlineData("/usr/bin/Rscript", "-e", "invisible(1)", "check_tables.R")]
    public void SoHasEveryColumnOfAComparisonAndOfAnExport(string program, string option, string probe, string script)
    {
        Skip.IfNot(File.Exists(program) && Run(program, [option, probe]).Code == 0, $"{program} with its tables package is not installed");
        using TemporaryFolder before = new();
        using TemporaryFolder after = new();
        using TemporaryFolder made = new();
        SampleRun run = SampleResults.Run([.. SampleResults.Run().Recordings, SampleResults.Hostile()]);
        run.Write(before.Path, figures: null, CancellationToken.None);
        (run with { Recordings = [.. run.Recordings.Select(Worse)] }).Write(after.Path, figures: null, CancellationToken.None);
        List<VerdictChange> changes = [];
        AuditComparison.Of(StoredAudit.Open(before.Path), StoredAudit.Open(after.Path), some => changes.AddRange(some), CancellationToken.None);
        File.WriteAllBytes(Path.Combine(made.Path, "changes.tsv"), [.. ChangesTsv.Header(), .. ChangesTsv.Rows([.. changes])]);
        BidsExport.Write(StoredAudit.Open(after.Path), Path.Combine(made.Path, "bids"), CancellationToken.None);

        (int code, string text) = Run(program, [RepositoryRoot.Fixture($"oracles/{script}"), made.Path]);

        Assert.True(code == 0, text);
        Assert.True(changes.Count > 30);
        Assert.Contains("changes.tsv", text, StringComparison.Ordinal);
        Assert.Contains("desc-quality_events.tsv", text, StringComparison.Ordinal);
    }

    private static RecordingResult Worse(RecordingResult recording) => recording with
    {
        Channels = [.. recording.Channels.Select(channel => channel with
        {
            Verdict = Grade.Reject,
            Reasons = ["clipping"],
            Cells = [.. channel.Cells.Take(3).Select(cell => cell with { Verdict = Grade.Questionable, NotAssessed = [new NotAssessed("drift", "short")] })],
        })],
    };

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
