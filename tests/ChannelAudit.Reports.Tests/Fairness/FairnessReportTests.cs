using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Fairness;
using ChannelAudit.Reports.Tests.Output;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Fairness;

public sealed class FairnessReportTests
{
    /// <summary>By hand: six participants that all lose 1 of 2 smiles and no frown: of 2^6 sign patterns 2 are as far from 0, of the 2^5 that count 1.</summary>
    [Fact]
    public void ConditionsAreExchangedWithinParticipants()
    {
        FairnessReport report = Report([.. Enumerable.Range(1, 6).Select(who => Recording("p" + who.Plain(), null, [("cheek", "s", Grade.Reject), ("cheek", "s", Grade.Pass), ("cheek", "f", Grade.Pass), ("cheek", "f", Grade.Pass)]))]);
        FairnessComparison found = One(report, Compared.Condition, CountedThing.Trials, "cheek");

        Assert.Equal((FairnessTest.Within, 6, 32, true), (found.Test, found.Units, found.Arrangements, found.IsExact));
        Assert.Equal(2.0 / 64, found.P!.Value, 12);
        Assert.Equal(2.0 / 64, found.SmallestP!.Value, 12);
        Assert.Equal(("s", 6, 12, "f", 0, 12), (found.Highest!.Level, found.Highest.Excluded.Count, found.Highest.Excluded.Total, found.Lowest!.Level, found.Lowest.Excluded.Count, found.Lowest.Excluded.Total));
        Assert.Equal((0.5, FairnessAnswer.StandsOut), (found.Difference!.Value, found.Answer));
    }

    /// <summary>The same 24 trials as if independent would give Fisher p = 0.014; with four participants none below 2/16 can be had.</summary>
    [Fact]
    public void FewParticipantsCannotReachSmallProbabilitiesHoweverManyTheirTrials()
    {
        (string, string, Grade)[] cells = [.. Enumerable.Range(0, 40).Select(i => ("cheek", i % 2 == 0 ? "s" : "f", i < 2 && i % 2 == 0 ? Grade.Reject : Grade.Pass))];
        FairnessComparison found = One(Report([.. Enumerable.Range(1, 4).Select(who => Recording("p" + who.Plain(), null, cells))]), Compared.Condition, CountedThing.Trials, "cheek");

        Assert.Equal(2.0 / 16, found.P!.Value, 12);
        Assert.Equal(FairnessAnswer.NotAssessed, found.Answer);
        Assert.Equal("too few participants or exclusions to tell: the smallest p that they allow is 0.125", found.Note);
    }

    /// <summary>Fisher's table (0, 4; 4, 0) has p = 2/70.</summary>
    [Fact]
    public void GroupsWithOneUnitAParticipantAreTestedExactly()
    {
        FairnessReport report = Report([.. Enumerable.Range(1, 8).Select(who => Recording("p" + who.Plain(), who <= 4 ? "garden" : "harbour", [("cheek", "s", Grade.Pass)], who <= 4 ? Grade.Pass : Grade.Reject))]);
        FairnessComparison found = One(report, Compared.Group, CountedThing.Channels, "cheek");

        Assert.Equal((FairnessTest.Fisher, 8, FairnessAnswer.StandsOut), (found.Test, found.Units, found.Answer));
        Assert.Equal(2.0 / 70, found.P!.Value, 12);
        Assert.Equal(("harbour", "garden"), (found.Highest!.Level, found.Lowest!.Level));
    }

    /// <summary>A participant with two sessions is one unit, not two: groups are exchanged among participants.</summary>
    [Fact]
    public void GroupsWithSeveralUnitsAParticipantAreExchangedAmongParticipants()
    {
        RecordingResult[] twice = [.. Enumerable.Range(1, 6).SelectMany(who => new[] { "a", "b" }.Select(session =>
            Recording("p" + who.Plain(), who <= 3 ? "garden" : "harbour", [("cheek", "s", who <= 3 ? Grade.Pass : Grade.Reject)], who <= 3 ? Grade.Pass : Grade.Reject, session)))];
        FairnessReport report = Report(twice);

        foreach (CountedThing of in new[] { CountedThing.Channels, CountedThing.Trials })
        {
            FairnessComparison found = One(report, Compared.Group, of, "cheek");
            Assert.Equal((FairnessTest.Between, 6, 20), (found.Test, found.Units, found.Arrangements));
            Assert.Equal(2.0 / 20, found.P!.Value, 12);
            Assert.Equal(FairnessAnswer.StandsOut, found.Answer);
        }
    }

    [Fact]
    public void SharesTenPointsApartStandOutWhateverTheProbability()
    {
        RecordingResult[] two = [Recording("p1", null, [("cheek", "s", Grade.Reject), ("cheek", "f", Grade.Pass)]), Recording("p2", null, [("cheek", "s", Grade.Pass), ("cheek", "f", Grade.Pass)])];
        FairnessComparison found = One(Report(two), Compared.Condition, CountedThing.Trials, "cheek");

        Assert.True(found.P > 0.05);
        Assert.Equal(FairnessAnswer.StandsOut, found.Answer);
    }

    [Fact]
    public void WhatCannotBeComparedIsNotAssessedBecause()
    {
        FairnessReport report = Report(Recording(null, null, [("cheek", "s", Grade.Reject), ("cheek", "s", Grade.Pass)]));

        Assert.All(report.Comparisons, one => Assert.Equal((FairnessAnswer.NotAssessed, null), (one.Answer, one.P)));
        Assert.Equal("not assessed: there is one condition only", One(report, Compared.Condition, CountedThing.Trials, "cheek").Note);
        Assert.StartsWith("not assessed: no group is known", One(report, Compared.Group, CountedThing.Trials, "cheek").Note, StringComparison.Ordinal);
        Assert.StartsWith("not assessed: there is one channel only", report.Comparisons.First(one => one.By == Compared.Channel).Note, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutExclusionsThereIsNoSignAndNoTest()
    {
        FairnessReport report = Report(Recording("p1", "a", [("cheek", "s", Grade.Pass), ("cheek", "f", Grade.Questionable)]), Recording("p2", "b", [("cheek", "s", Grade.Pass), ("cheek", "f", Grade.Pass)]));
        FairnessComparison found = One(report, Compared.Condition, CountedThing.Trials, "cheek");

        Assert.Equal((FairnessAnswer.NoSign, FairnessTest.None, "nothing was excluded"), (found.Answer, found.Test, found.Note));
    }

    [Fact]
    public void ParticipantsWithoutEveryConditionCountInSharesOnly()
    {
        RecordingResult[] some =
        [
            .. Enumerable.Range(1, 3).Select(who => Recording("p" + who.Plain(), null, [("cheek", "s", Grade.Reject), ("cheek", "f", Grade.Pass)])),
            Recording("p4", null, [("cheek", "s", Grade.Pass)]), Recording("p5", null, [("brow", "s", Grade.Pass), ("brow", "f", Grade.Pass)]),
        ];
        FairnessComparison found = One(Report(some), Compared.Condition, CountedThing.Trials, "cheek");

        Assert.Equal((3, 4, 4), (found.Units, found.Highest!.Excluded.Total, found.Highest.Participants));
        Assert.Contains("1 participant without every condition left out of the test", found.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void AParticipantInTwoGroupsIsLeftOutOfGroupsAndSaid()
    {
        RecordingResult[] some =
        [
            Recording("p1", "a", [("cheek", "s", Grade.Reject)]), Recording("p1", "b", [("cheek", "s", Grade.Reject)], Grade.Pass, "2"),
            Recording("p2", "a", [("cheek", "s", Grade.Reject)]), Recording("p3", "b", [("cheek", "s", Grade.Pass)]),
        ];
        FairnessComparison found = One(Report(some), Compared.Group, CountedThing.Trials, "cheek");

        Assert.Equal(2, found.Units);
        Assert.Contains("1 participant in several groups left out", found.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void TheOrderInWhichRecordingsComeChangesNoByte()
    {
        RecordingResult[] some = [.. Enumerable.Range(1, 30).Select(who => Recording(
            who % 7 == 0 ? null : "p" + who.Plain(), who % 2 == 0 ? "a" : "b", [("cheek", "s", (Grade)(who % 3)), ("brow", "f", Grade.Pass), ("cheek", "f", (Grade)(who % 2 * 2)), ("brow", "s", Grade.Reject)]))];
        FairnessReport one = Report(some);
        FairnessReport other = Report([.. some.Reverse()]);

        Assert.Equal(FairnessTsv.Render(one), FairnessTsv.Render(other));
        Assert.Equal(FairnessTsv.RenderShares(one), FairnessTsv.RenderShares(other));
        Assert.Contains(one.Comparisons, comparison => comparison is { IsExact: false, Arrangements: 4999 });
    }

    /// <summary>Fair by construction: each trial is excluded by a draw that knows no condition. Trials of one participant share their luck, so that a
    /// test of single trials would call far too often.</summary>
    [Fact]
    public void OverManyFairStudiesAtMostAboutATwentiethOfTestsFallBelowOneInTwenty()
    {
        int below = 0;
        for (uint study = 1; study <= 120; study++)
        {
            uint state = study * 2654435761;
            uint Next() => state = unchecked((1664525 * state) + 1013904223);
            RecordingResult[] some = [.. Enumerable.Range(1, 8).Select(who =>
            {
                uint luck = Next() >> 30;
                return Recording("p" + who.Plain(), null, [.. Enumerable.Range(0, 20).Select(i => ("cheek", i % 2 == 0 ? "s" : "f", Next() >> 28 < 2 + (4 * luck) ? Grade.Reject : Grade.Pass))]);
            })];
            below += One(Report(some), Compared.Condition, CountedThing.Trials, "cheek").P < 0.05 ? 1 : 0;
        }

        // 6 expected at most, 15 is 4 standard deviations above.
        Assert.InRange(below, 0, 15);
    }

    [Fact]
    public void CountsAreKeptAndRecordingsAreNot()
    {
        ExclusionTally tally = new();
        WeakReference first = AddOne(tally);
        GC.Collect();
        GC.WaitForPendingFinalizers();
        GC.Collect();

        Assert.False(first.IsAlive);
        Assert.Equal(1, tally.Report().Participants);
    }

    [Fact]
    public void AnAuditHasItsTablesAndItsSection()
    {
        using TemporaryFolder folder = new();
        SampleResults.Run().Write(folder.Path, figures: null, CancellationToken.None);

        string[] comparisons = File.ReadAllLines(Path.Combine(folder.Path, FairnessTsv.FileName));
        string page = File.ReadAllText(Path.Combine(folder.Path, "report.html"));

        Assert.Equal(string.Join('\t', FairnessTsv.Columns), comparisons[0]);
        Assert.True(comparisons.Length > 5);
        Assert.True(File.Exists(Path.Combine(folder.Path, FairnessTsv.SharesFileName)));
        Assert.Contains("<section id=\"even\">", page, StringComparison.Ordinal);
        Assert.Contains("<a href=\"#even\">", page, StringComparison.Ordinal);
        Golden.Match("fairness.tsv", Encoding.UTF8.GetString(FairnessTsv.Render(SampleResults.Run().Digest.Fairness!)));
    }

    [Fact]
    public void HostileLabelsStayTextInTablesAndOnThePage()
    {
        RecordingResult[] some = [.. Enumerable.Range(1, 3).Select(who => Recording("=p" + who.Plain(), "<b>", [("<script>", "=1+1", Grade.Reject), ("<script>", "a\tb", Grade.Pass)]))];
        string table = Encoding.UTF8.GetString(FairnessTsv.Render(Report(some)));
        string page = SampleResults.Run(some).Report();

        Assert.Contains("\t'=1+1\t", table, StringComparison.Ordinal);
        Assert.Contains("\"a\tb\"", table, StringComparison.Ordinal);
        Assert.DoesNotContain("<script>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<b><", page, StringComparison.Ordinal);
    }

    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.NoInlining)]
    private static WeakReference AddOne(ExclusionTally tally)
    {
        RecordingResult recording = Recording("p1", null, [("cheek", "s", Grade.Reject)]);
        tally.Add(recording);
        return new WeakReference(recording);
    }

    private static FairnessReport Report(params RecordingResult[] recordings)
    {
        ExclusionTally tally = new();
        foreach (RecordingResult recording in recordings)
        {
            tally.Add(recording);
        }

        return tally.Report();
    }

    private static FairnessComparison One(FairnessReport report, Compared by, CountedThing of, string? channel) =>
        report.Comparisons.Single(one => one.By == by && one.Of == of && string.Equals(one.Channel, channel, StringComparison.Ordinal));

    /// <summary>A recording whose channels have these cells; a label of a trial for each.</summary>
    private static RecordingResult Recording(string? participant, string? group, (string Channel, string Condition, Grade Verdict)[] cells, Grade channel = Grade.Pass, string session = "1")
    {
        RecordingResult clean = SampleResults.Clean($"{participant ?? "nobody"}-{session}-{group}");
        string[] names = [.. cells.Select(cell => cell.Channel).Distinct(StringComparer.Ordinal)];
        ImmutableArray<Trial> trials = [.. cells.Select((cell, place) => clean.Trials[2] with { Number = place + 1, Label = cell.Condition, OnsetS = 4 * place })];
        return clean with
        {
            Participant = participant,
            Group = group,
            Trials = trials,
            Pairs = [],
            Channels =
            [
                .. names.Select(name => clean.Channels[0] with
                {
                    Name = name,
                    Verdict = channel,
                    Cells = [.. cells.Select((cell, place) => (cell, place)).Where(one => string.Equals(one.cell.Channel, name, StringComparison.Ordinal))
                        .Select(one => SampleResults.Cell(one.place + 1, one.cell.Verdict))],
                }),
            ],
        };
    }
}
