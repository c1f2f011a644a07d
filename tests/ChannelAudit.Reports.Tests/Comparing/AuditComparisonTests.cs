using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Comparing;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Tests.Output;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Comparing;

public sealed class AuditComparisonTests : IDisposable
{
    private readonly TemporaryFolder _a = new();
    private readonly TemporaryFolder _b = new();

    public void Dispose()
    {
        _a.Dispose();
        _b.Dispose();
    }

    [Fact]
    public void AnAuditIsTheSameAsItself()
    {
        (AuditComparison found, VerdictChange[] changes) = Compare(SampleResults.Run(), SampleResults.Run());

        Assert.True(found.IsSame);
        Assert.Empty(changes);
        Assert.Equal(SampleResults.Run().Recordings.Sum(recording => recording.Channels.Sum(channel => channel.Cells.Length)), found.Trials.Total);
        Assert.Equal((5, 1, 1), (found.Channels.Count(Grade.Pass, Grade.Pass), found.Channels.Count(Grade.Questionable, Grade.Questionable), found.Channels.Count(Grade.Reject, Grade.Reject)));
        Assert.EndsWith("\nNo difference in recordings, verdicts or reasons.\n", CompareText.Render(found), StringComparison.Ordinal);
    }

    [Fact]
    public void AChangedTrialHasItsReasonsTheNumberAndBothLimits()
    {
        (AuditComparison found, VerdictChange[] changes) = Compare(SampleResults.Run(SampleResults.Clean("x")), Stricter(3.2, 3));

        VerdictChange change = Assert.Single(changes);
        Assert.Equal(("x", "EMG cheek", "cheek", 3, "happy", 20.5), (change.Recording, change.Label, change.Channel, change.Trial!.Value, change.Condition, change.OnsetS!.Value));
        Assert.Equal((Grade.Pass, Grade.Reject), (change.VerdictA, change.VerdictB));
        Assert.Equal(new[] { ReasonCode.LineNoise }, change.ReasonsNew.AsEnumerable(), StringComparer.Ordinal);
        Assert.Empty(change.ReasonsGone);
        Assert.Equal(new MeasureChange("line_rms", "uV", 0.25, 3.2, 5, 3), change.Measure);
        Assert.Equal(1, found.Trials.Count(Grade.Pass, Grade.Reject));
        Assert.Equal((11, 12), (found.Trials.Count(Grade.Pass, Grade.Pass), found.Trials.Total));
        Assert.Contains("cheek, trial 3 (happy): pass -> reject; now line-noise; line_rms 0.25 -> 3.2 \u00B5V: limit 5 -> 3\n", CompareText.Render(found), StringComparison.Ordinal);
        Assert.False(found.IsSame);
    }

    [Fact]
    public void TheOtherWayRoundTheReasonIsGone()
    {
        (_, VerdictChange[] changes) = Compare(Stricter(3.2, 3), SampleResults.Run(SampleResults.Clean("x")));

        VerdictChange change = Assert.Single(changes);
        Assert.Equal((Grade.Reject, Grade.Pass), (change.VerdictA, change.VerdictB));
        Assert.Equal(new[] { ReasonCode.LineNoise }, change.ReasonsGone.AsEnumerable(), StringComparer.Ordinal);
        Assert.Empty(change.ReasonsNew);
        Assert.Equal(new MeasureChange("line_rms", "uV", 3.2, 0.25, 3, 5), change.Measure);
    }

    [Fact]
    public void InputsThatDifferAloneAreSaidAndAreNoDifference()
    {
        SampleRun other = SampleResults.Run();
        Criterion line = other.Criteria.All[0] with { Reject = [new LimitSet([new Limit("line_rms", 3)])] };
        other = other with { Audit = other.Audit with { Version = "0.2.0", Criteria = other.Criteria with { All = [line, other.Criteria.All[1]], Sha256 = new string('c', 64), FileName = "lab.toml" } } };

        (AuditComparison found, _) = Compare(SampleResults.Run(), other);

        string text = CompareText.Render(found);
        Assert.True(found.IsSame);
        Assert.Contains("  version   0.1.0 -> 0.2.0\n", text, StringComparison.Ordinal);
        Assert.Contains("  criteria  the defaults (4f0c0b7c) -> lab.toml (cccccccc)\n", text, StringComparison.Ordinal);
        Assert.Contains("line-noise, reject: line_rms \u2265 5 \u00B5V and line_ratio \u2265 0 dB -> line_rms \u2265 3 \u00B5V\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("drift, ", text, StringComparison.Ordinal);
        Assert.Contains("  setup     setup.toml, the same in both\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void RecordingsThatOnlyOneHasAndOtherBytesAreDifferences()
    {
        RecordingResult clean = SampleResults.Clean("both");

        (AuditComparison found, VerdictChange[] changes) = Compare(
            SampleResults.Run(clean, SampleResults.Clean("first")),
            SampleResults.Run(clean with { Sha256 = new string('d', 64) }, SampleResults.Clean("second")));

        Assert.Empty(changes);
        Assert.False(found.IsSame);
        Assert.Equal(["first", "second", "both"], [.. found.OnlyInA, .. found.OnlyInB, .. found.OtherBytes], StringComparer.Ordinal);
        string text = CompareText.Render(found);
        Assert.Contains("Recordings: 1 in both\n  only in A: first\n  only in B: second\n  other bytes (SHA-256 differs): both\n", text, StringComparison.Ordinal);
        Assert.EndsWith("\nNo difference in verdicts or reasons.\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void ChannelsAreMatchedByLabelAndTrialsByWhenTheyAre()
    {
        RecordingResult before = SampleResults.Clean("x");
        RecordingResult after = before with
        {
            Trials = [.. before.Trials.Skip(1).Select((trial, index) => trial with { Number = index + 1 })],
            Channels = [.. before.Channels.Select(channel => channel with { Name = "site " + channel.Name, Cells = channel.Cells[..5] })],
        };

        (AuditComparison found, VerdictChange[] changes) = Compare(SampleResults.Run(before), SampleResults.Run(after));

        Assert.Equal(10, found.Trials.Count(Grade.Pass, Grade.Pass));
        Assert.Equal(
            new[] { ("site cheek", 1, "rest", Grade.Pass, (Grade?)null), ("site brow", 1, "rest", Grade.Pass, null) },
            changes.Select(change => (change.Channel, change.Trial!.Value, change.Condition!, change.VerdictA!.Value, change.VerdictB)));
    }

    [Fact]
    public void WhatIsNoLongerAssessedIsAChangeWithoutANumber()
    {
        RecordingResult before = SampleResults.Clean("x");
        ChannelResult open = before.Channels[0] with { NotAssessed = [new NotAssessed(ReasonCode.Drift, "high-passed")] };

        (_, VerdictChange[] changes) = Compare(SampleResults.Run(before), SampleResults.Run(before with { Channels = [open, before.Channels[1]] }));

        VerdictChange change = Assert.Single(changes);
        Assert.Null(change.Trial);
        Assert.Null(change.Measure);
        Assert.Equal(new[] { ReasonCode.Drift }, change.NotAssessedNew.AsEnumerable(), StringComparer.Ordinal);
    }

    [Fact]
    public void TrialsThatChangeAlikeAreOneLineOnTheScreenAndAllInTheTable()
    {
        RecordingResult before = SampleResults.Large();
        RecordingResult after = before with
        {
            Channels = [.. before.Channels.Select(channel => channel with { Cells = [.. channel.Cells.Select(cell => cell with { Verdict = Grade.Questionable })] })],
        };

        (AuditComparison found, VerdictChange[] changes) = Compare(SampleResults.Run(before), SampleResults.Run(after));

        Assert.Equal(4 * 360, changes.Length);
        Assert.Equal((4 * 360, 4), (found.ChangedTrials, found.Shown.Length));
        Assert.EndsWith("    all 360 trials of chin: pass -> questionable\n", CompareText.Render(found), StringComparison.Ordinal);
    }

    [Fact]
    public void LongListsAreCutOnTheScreen()
    {
        RecordingResult before = SampleResults.Large(trials: 60);
        RecordingResult after = before with
        {
            Channels = [.. before.Channels.Select(channel => channel with { Cells = [.. channel.Cells.Select((cell, place) => cell with
            {
                Verdict = Grade.Questionable,
                Reasons = [FormattableString.Invariant($"reason-{place}")],
            })] })],
        };

        (AuditComparison found, _) = Compare(SampleResults.Run(before), SampleResults.Run(after));

        Assert.Equal((4 * 60, AuditComparison.MostShown), (found.ChangedTrials, found.Shown.Length));
        Assert.EndsWith("  and 40 more; --out FILE.tsv has all of them\n", CompareText.Render(found), StringComparison.Ordinal);
    }

    [Fact]
    public void ANumberOfTheQuietSecondsAroundATrialIsNotSetBesideItsOwn()
    {
        SampleRun stricter = Stricter(3.2, 3);
        RecordingResult recording = stricter.Recordings[0];
        CellResult cell = recording.Channels[0].Cells[2];
        CellResult quiet = SampleResults.Clean("x").Channels[0].Cells[2] with
        {
            Verdict = Grade.Reject,
            Reasons = [ReasonCode.LineNoise],
            Findings = [cell.Findings[0] with { FromQuietStretches = true }],
        };
        SampleRun other = SampleResults.Run(recording with { Channels = [recording.Channels[0] with { Cells = recording.Channels[0].Cells.SetItem(2, quiet) }, recording.Channels[1]] });

        (AuditComparison found, VerdictChange[] changes) = Compare(SampleResults.Run(SampleResults.Clean("x")), other);

        Assert.Equal(new MeasureChange("line_rms", "uV", null, 3.2, 5, 3, "in the quiet seconds around it"), Assert.Single(changes).Measure);
        Assert.Contains("line_rms 3.2 \u00B5V in the quiet seconds around it: limit 5 -> 3\n", CompareText.Render(found), StringComparison.Ordinal);
    }

    [Fact]
    public void ATrialsOwnNumberIsShownWhereAFindingOfTheChannelCarriesAnother()
    {
        RecordingResult own = SampleResults.Clean("x");
        own = own with { Channels = [own.Channels[0] with { Cells = own.Channels[0].Cells.SetItem(2, SampleResults.Cell(3, Grade.Pass, 4.2)) }, own.Channels[1]] };
        CellResult judged = own.Channels[0].Cells[2] with
        {
            Verdict = Grade.Reject,
            Reasons = [ReasonCode.LineNoise],
            Findings = [SampleResults.Finding(ReasonCode.LineNoise, Grade.Reject, ["cheek"], null, 0, 65, [new Evidence("line_rms", 3.2, "uV", 3)], "mains", "a lead")],
        };

        (_, VerdictChange[] changes) = Compare(
            SampleResults.Run(own),
            SampleResults.Run(own with { Channels = [own.Channels[0] with { Cells = own.Channels[0].Cells.SetItem(2, judged) }, own.Channels[1]] }));

        Assert.Equal((4.2, 4.2), (Assert.Single(changes).Measure!.ValueA, changes[0].Measure!.ValueB));
    }

    [Fact]
    public void HostileLabelsStayInTheirCellsAndOnTheirLines()
    {
        RecordingResult before = SampleResults.Hostile();
        RecordingResult after = before with { Channels = [.. before.Channels.Select(channel => channel with { Verdict = Grade.Questionable })] };

        (AuditComparison found, VerdictChange[] changes) = Compare(SampleResults.Run(before), SampleResults.Run(after));

        byte[] rows = ChangesTsv.Rows([.. changes]);
        string[] lines = CompareText.Render(found).Split('\n');
        Assert.Equal(before.Channels.Length, changes.Length);
        Assert.Equal(before.Channels.Length, lines.Count(line => line.Contains("whole channel: pass -> questionable", StringComparison.Ordinal)));
        Assert.DoesNotContain("\u001b", CompareText.Render(found), StringComparison.Ordinal);
        Assert.DoesNotContain("\n=", System.Text.Encoding.UTF8.GetString(rows), StringComparison.Ordinal);
    }

    // Trial 3 of the cheek is rejected: its mains are beyond a limit that is lower here.
    private static SampleRun Stricter(double lineUv, double limit)
    {
        RecordingResult clean = SampleResults.Clean("x");
        ChannelResult cheek = clean.Channels[0];
        CellResult changed = SampleResults.Cell(3, Grade.Reject, lineUv) with
        {
            Reasons = [ReasonCode.LineNoise],
            Findings = [SampleResults.Finding(ReasonCode.LineNoise, Grade.Reject, ["cheek"], 3, 20.5, 23.5, [new Evidence("line_rms", lineUv, "uV", limit)], "mains", "a lead")],
        };
        return SampleResults.Run(clean with { Channels = [cheek with { Cells = cheek.Cells.SetItem(2, changed) }, clean.Channels[1]] });
    }

    private (AuditComparison Found, VerdictChange[] Changes) Compare(SampleRun a, SampleRun b)
    {
        a.Write(_a.Path, figures: null, CancellationToken.None);
        b.Write(_b.Path, figures: null, CancellationToken.None);
        List<VerdictChange> changes = [];
        AuditComparison found = AuditComparison.Of(StoredAudit.Open(_a.Path), StoredAudit.Open(_b.Path), some => changes.AddRange(some), CancellationToken.None);
        return (found, [.. changes]);
    }
}
