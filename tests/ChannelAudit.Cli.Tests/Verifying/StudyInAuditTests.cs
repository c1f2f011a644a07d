using ChannelAudit.Cli.Tests.Demo;
using ChannelAudit.Reports.Stored;
using Xunit;

namespace ChannelAudit.Cli.Tests.Verifying;

/// <summary><c>detectability --out</c> into an audit: the page gets its section, and everything else stays what it was.</summary>
public sealed class StudyInAuditTests
{
    [Fact]
    public async Task OnlyPagesChangeAndTheyAreThoseOfTheNextScreen()
    {
        using SmallStudy study = await SmallStudy.Make();
        string[] before = [.. study.State("audit").Where(line => !IsPage(line))];

        CommandRun run = await Detect(study.In("study/b.csv"), study.Audit, study.With[..4]);
        string[] after = study.State("audit");
        CommandRun unchanged = await DemoRun.Run(["screen", study.Data, "--out", study.Audit, "--figures", "none", .. study.With]);
        File.Delete(study.In("audit/conditions.tsv"));
        CommandRun again = await DemoRun.Run(["screen", study.Data, "--out", study.Audit, "--figures", "none", .. study.With]);

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.EndsWith($"\nWritten to {study.Audit}/recordings/b/: detectability.json, detectability.tsv, detectability.png, detectability.txt; report.html has a section on it\n", run.Output, StringComparison.Ordinal);
        Assert.Equal(before, after.Where(line => !IsPage(line) && !line.Contains("detectability.", StringComparison.Ordinal)), StringComparer.Ordinal);
        Assert.Contains("id=\"silence\"", await File.ReadAllTextAsync(study.In("audit/report.html")), StringComparison.Ordinal);
        Assert.Equal("ohm.tsv", StoredAudit.Open(study.Audit).Impedance.FileName);
        Assert.Contains("Nothing has changed since", unchanged.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing has changed since", again.Output, StringComparison.Ordinal);
        Assert.Equal(after, study.State("audit"), StringComparer.Ordinal);
    }

    [Fact]
    public async Task AnAuditWithAStudyIsVerifiedAsTheSame()
    {
        using SmallStudy study = await SmallStudy.Make();
        await Detect(study.In("study/b.csv"), study.Audit, study.With[..4]);

        CommandRun alone = await study.Verify();
        CommandRun whole = await study.Verify("--data", study.Data, "--no-pictures");

        Assert.All(new[] { alone, whole }, run => Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error)));
        Assert.All(new[] { alone, whole }, run => Assert.DoesNotContain("no part of the audit", run.Output, StringComparison.Ordinal));
        Assert.All(new[] { alone, whole }, run => Assert.Contains("not checked  detectability  what it found in b is taken as it is: run it again", run.Output, StringComparison.Ordinal));
    }

    [Fact]
    public async Task OtherEventsThanTheAuditHadAreRefusedBeforeAnythingIsPlanted()
    {
        using SmallStudy study = await SmallStudy.Make();
        string events = study.Write("marks.tsv", "onset\tduration\ttrial_type\n1\t2\tlook\n");
        string alone = study.In("alone");
        await DemoRun.Run("screen", study.In("study/b.csv"), "--events", events, "--figures", "none", "--out", alone);
        string[] before = study.State("alone");

        CommandRun without = await Detect(study.In("study/b.csv"), alone);
        string[] after = study.State("alone");
        CommandRun with = await Detect(study.In("study/b.csv"), alone, "--events", events);

        Assert.Equal((ExitCode.Usage, string.Empty), (without.Code, without.Output));
        Assert.Equal($"error: {alone}: was audited with other events than given here, so the study would not hold for it\nhint: give the events of that audit, or a new folder\n", without.Error);
        Assert.Equal(before, after, StringComparer.Ordinal);
        Assert.Equal((ExitCode.Done, string.Empty), (with.Code, with.Error));
        Assert.Equal("marks.tsv", StoredAudit.Open(alone).Inputs.Single().FileName);
    }

    [Fact]
    public async Task TheRecordingKeepsItsIdAndDecisionsStayInForce()
    {
        using SmallStudy study = await SmallStudy.Make();
        string audit = study.In("nested");
        Directory.CreateDirectory(study.In("nest/sub-01"));
        File.Copy(study.In("study/b.csv"), study.In("nest/sub-01/S.csv"));
        await DemoRun.Run("screen", study.In("nest"), "--figures", "none", "--out", audit);
        await DemoRun.Run("decide", audit, "--channel", "EMG 1", "--verdict", "pass", "--reason", "seen in the video", "--by", "A. Reader");

        CommandRun run = await Detect(study.In("nest/sub-01/S.csv"), audit);
        CommandRun decisions = await DemoRun.Run("decide", audit);

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.Equal("sub-01+S", Assert.Single(StoredAudit.Open(audit).Recordings).Id);
        Assert.DoesNotContain("stale", decisions.Output, StringComparison.Ordinal);
        Assert.Contains("id=\"silence\"", await File.ReadAllTextAsync(study.In("nested/report.html")), StringComparison.Ordinal);
    }

    private static Task<CommandRun> Detect(string recording, string audit, params string[] more) =>
        DemoRun.Run(["detectability", recording, "--faults", "dropout", "--repeats", "1", "--out", audit, .. more]);

    // A page is made again to show the study, and audit.json lists its hash.
    private static bool IsPage(string line) => line.Contains("report.html ", StringComparison.Ordinal) || line.Contains("audit.json ", StringComparison.Ordinal);
}
