using ChannelAudit.Cli.Screening;
using ChannelAudit.Reports.Console;
using ChannelAudit.Synthesis;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Commands;

public sealed class DetectabilityCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task IntoAnAuditOfTheRecordingItsReportShowsWhatSilenceMeans()
    {
        string recording = Recorded();
        string audit = Path.Combine(_folder.Folder, "audit");
        Assert.Equal(ExitCode.Done, (await Run("screen", recording, "--out", audit, "--figures", "none")).Code);

        CommandRun run = await Run("detectability", recording, "--faults", "dropout", "--repeats", "1", "--out", audit);

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.Contains("samples that are not there (dropout), ms\n  found 9 times in 10 from 1, half of the time from 1\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("id=\"silence\"", await File.ReadAllTextAsync(Path.Combine(audit, "report.html")), StringComparison.Ordinal);
        Assert.Equal("channels.tsv", Path.GetFileName(Directory.GetFiles(audit, "channels.tsv")[0]));
        Assert.Equal(4, Directory.GetFiles(Path.Combine(audit, "recordings", "made"), "detectability.*").Length);
    }

    [Fact]
    public async Task ALaterAuditWithOtherInputsTakesItAwayWithAWord()
    {
        string recording = Recorded();
        string audit = Path.Combine(_folder.Folder, "audit");
        string criteria = Path.Combine(_folder.Folder, "lab.toml");
        await File.WriteAllTextAsync(criteria, "[dropout]\nreject = [{ gap = 20.0 }]\n");
        await Run("screen", recording, "--out", audit, "--figures", "none");
        await Run("detectability", recording, "--faults", "dropout", "--repeats", "1", "--out", audit);

        CommandRun run = await Run("screen", recording, "--criteria", criteria, "--out", audit, "--figures", "none");

        Assert.Contains("what detectability found in made is of other inputs: it was taken away; run it again", run.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(Path.Combine(audit, "recordings", "made"), "detectability.*"));
        Assert.DoesNotContain("id=\"silence\"", await File.ReadAllTextAsync(Path.Combine(audit, "report.html")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--faults", "line-nois", "error: --faults: 'line-nois' is not known\nhint: did you mean 'line-noise'? --faults takes ")]
    [InlineData("--repeats", "0", "error: --repeats: 0 is not from 1 to 100\nhint: give a whole number from 1 to 100, or leave --repeats out\n")]
    [InlineData("--minutes", "601", "error: --minutes: 601 is not from 1 to 600\nhint: ")]
    public async Task WrongWordsAreRefused(string option, string value, string start)
    {
        CommandRun run = await Run("detectability", Recorded(), option, value);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith(start, run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Fact]
    public async Task ARecordingThatIsNotThereIsAnError()
    {
        CommandRun run = await Run("detectability", "nowhere.edf");

        Assert.Equal((ExitCode.Usage, "error: detectability: there is no file nowhere.edf\nhint: give the path of a file that exists\n"), (run.Code, run.Error));
    }

    [Fact]
    public async Task AFolderOfSomebodyElseIsRefusedBeforeAnythingIsPlanted()
    {
        string other = Path.Combine(_folder.Folder, "other");
        Directory.CreateDirectory(other);
        await File.WriteAllTextAsync(Path.Combine(other, "notes.txt"), "mine");

        CommandRun run = await Run("detectability", Recorded(), "--out", other);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("is neither empty, nor an audit, nor an earlier study (it holds notes.txt)\nhint: give a new folder with --out\n", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AnAuditWithOtherCriteriaIsRefused()
    {
        string recording = Recorded();
        string audit = Path.Combine(_folder.Folder, "audit");
        string criteria = Path.Combine(_folder.Folder, "lab.toml");
        await File.WriteAllTextAsync(criteria, "[dropout]\nreject = [{ gap = 20.0 }]\n");
        await Run("screen", recording, "--criteria", criteria, "--out", audit, "--figures", "none");

        CommandRun run = await Run("detectability", recording, "--faults", "dropout", "--out", audit);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("was audited with other criteria than given here", run.Error, StringComparison.Ordinal);
    }

    private string Recorded()
    {
        string file = Path.Combine(_folder.Folder, "made.edf");
        if (!File.Exists(file))
        {
            EdfFiles.Write(MadeRecording.Make(new Protocol { ScoredTrials = 6, RestS = 5, TaskS = 3, PauseS = 2, Answers = [[new SiteActivity("brow", 5)]] }.Plan(5, SitePlan.Face)), file);
        }

        return file;
    }

    private static Task<CommandRun> Run(params string[] arguments) => CommandRun.With(new AuditEngine(new TerminalStyle()), CancellationToken.None, arguments);
}
