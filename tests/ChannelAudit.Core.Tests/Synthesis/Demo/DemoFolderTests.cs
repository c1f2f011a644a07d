using System.Globalization;
using ChannelAudit.Core.Tests.Acceptance;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Demo;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Tests.Synthesis.Demo;

/// <summary>The files of the demo's folder against each other.</summary>
public sealed class DemoFolderTests(WrittenDemo demo) : IClassFixture<WrittenDemo>
{
    private const int FirstScored = 5;
    private const int LastScored = 28;

    [Fact]
    public void TheStudyIsTakenForItsSixRecordingsAndNothingElse() => Assert.Equal(
        DemoStudy.Sessions.Select(session => session.Code), RecordingList.Find([demo.In("study")], []).Select(entry => entry.Id), StringComparer.Ordinal);

    [Fact]
    public void TheEventsTableBesideARecordingChangesNothing()
    {
        using TemporaryFolder alone = new();
        foreach (RecordingEntry entry in RecordingList.Find([demo.In("study")], []))
        {
            string copy = alone.In(Path.GetFileName(entry.FilePath));
            File.Copy(entry.FilePath, copy);

            RecordingResult without = demo.Audited(entry with { FilePath = copy });

            Assert.Equal(MadeAudit.Everything(without), MadeAudit.Everything(demo.Of(entry.Id)));
            Assert.Empty(demo.Of(entry.Id).Warnings);
        }
    }

    [Fact]
    public void TheEventsTableListsTheEventsOfItsRecording()
    {
        foreach (RecordingResult result in demo.Results)
        {
            string[] rows = [.. File.ReadAllLines(demo.In($"study/{result.Id}_events.tsv")).Skip(1)];

            Assert.Equal(
                result.Trials.Select(trial => string.Create(CultureInfo.InvariantCulture, $"{trial.OnsetS:0.###} {trial.DurationS:0.###} {trial.Label}")),
                rows.Select(row => row.Split('\t')).Select(cells => $"{cells[0]} {cells[1]} {cells[2]}"),
                StringComparer.Ordinal);
        }
    }

    [Fact]
    public void TheSetupNamesTheSitesOfThePlan()
    {
        Assert.Equal(
            SitePlan.Face.Select(site => (site.Name, site.Label, site.Muscle, site.Task)),
            demo.Setup.Sites.Select(site => (site.Name, site.Channel, site.Muscle, site.Task)));
        Assert.Equal(
            SitePlan.Face.SelectMany(site => site.Adjacent), demo.Setup.Sites.SelectMany(site => site.Adjacent), StringComparer.Ordinal);
    }

    [Fact]
    public void TheReadingsBeforeTheGelLookFineAndOnlyTheOneAcrossShowsIt()
    {
        string[][] gel = Rows("impedance/K11.tsv");
        string[][] clean = Rows("impedance/K03.tsv");

        Assert.Equal(9, gel.Count(row => string.Equals(row[4], "before", StringComparison.Ordinal)));
        Assert.All(gel, row => Assert.InRange(Kohm(row), 0.1, 5));
        Assert.True(Kohm(gel[^1]) < 0.5);
        Assert.InRange(Kohm(clean[^1]), 2, 5);
        Assert.Equal(("cheek", "cheek.a-eye.a"), (gel[^1][0], gel[^1][1]));
    }

    [Fact]
    public void ReadingsGoWithTheirStories()
    {
        Assert.All(Rows("impedance/K07.tsv").Where(row => string.Equals(row[4], "before", StringComparison.Ordinal)), row => Assert.InRange(Kohm(row), 0.1, 5));
        Assert.All(Rows("impedance/K07.tsv").Where(row => row is ["cheek", "a-ground", .., "after"]), row => Assert.True(Kohm(row) > 20));
        Assert.All(Rows("impedance/K18.tsv").Where(row => row is ["brow", "a-b", ..]), row => Assert.True(Kohm(row) > 20));
    }

    [Fact]
    public void TheListOfExclusionsIsSupportedButForOneLineAndOneLineIsMissing()
    {
        string[][] lines = Rows("exclusions.tsv");
        Grade[] least = [.. lines.Select(line => Named(line).Min(cell => cell.Verdict))];
        var named = lines.SelectMany(Named).Select(cell => (cell.Recording, cell.Channel, cell.Trial)).ToHashSet();

        Assert.All(lines, line => Assert.NotEmpty(Named(line)));
        Assert.Equal((29, 27, 1), (lines.Length, least.Count(grade => grade == Grade.Reject), least.Count(grade => grade == Grade.Questionable)));
        Assert.Equal("K03 eye 20 sneezed", string.Join(' ', lines[Array.IndexOf(least, Grade.Pass)]));
        Assert.Equal("K18 brow n/a never settled", string.Join(' ', lines[Array.IndexOf(least, Grade.Questionable)]));
        Assert.Equal([("K07", "cheek", 16)], Scored().Where(cell => cell.Verdict == Grade.Reject).Select(cell => (cell.Recording, cell.Channel, cell.Trial)).Where(cell => !named.Contains(cell)));
    }

    [Fact]
    public void RejectedTrialsByConditionAreThoseThatTheReadmeCounts()
    {
        var counts = Scored().Where(cell => cell.Verdict == Grade.Reject).CountBy(cell => cell.Condition, StringComparer.Ordinal);

        Assert.Equal([("harbour", 32), ("meadow", 21), ("orchard", 23)], counts.Select(one => (one.Key, one.Value)).Order());
        Assert.Contains("32 rejected trials of harbours, 21 of meadows and 23 of orchards", DemoText.Of(DemoText.Readme), StringComparison.Ordinal);
    }

    [Fact]
    public void TheReadmeTellsEveryStory() => Assert.All(
        DemoStudy.Sessions,
        session => Assert.Contains($"| {session.Code} | {session.Story} |", DemoText.Of(DemoText.Readme), StringComparison.Ordinal));

    [Fact]
    public void EveryTextIsPlain() => Assert.All(
        [DemoText.Readme, DemoText.Criteria, DemoText.Exclusions, DemoText.Setup],
        name => Assert.True(!DemoText.Of(name).Contains('\r', StringComparison.Ordinal) && DemoText.Of(name).EndsWith('\n')));

    private string[][] Rows(string file) => [.. File.ReadAllLines(demo.In(file)).Skip(1).Select(line => line.Split('\t'))];

    private static double Kohm(string[] row) => double.Parse(row[2], CultureInfo.InvariantCulture);

    private IEnumerable<(string Recording, string Channel, int Trial, string Condition, Grade Verdict)> Scored() =>
        from result in demo.Results
        from channel in result.Channels
        from cell in channel.Cells
        where cell.Trial is >= FirstScored and <= LastScored
        select (result.Id, channel.Name, cell.Trial, result.Trials[cell.Trial - 1].Label!, cell.Verdict);

    private IEnumerable<(string Recording, string Channel, int Trial, string Condition, Grade Verdict)> Named(string[] line) => Scored().Where(cell =>
        string.Equals(line[0], cell.Recording, StringComparison.Ordinal)
        && (line[1] is "n/a" || string.Equals(line[1], cell.Channel, StringComparison.Ordinal))
        && (line[2] is "n/a" || int.Parse(line[2], CultureInfo.InvariantCulture) == cell.Trial));
}
