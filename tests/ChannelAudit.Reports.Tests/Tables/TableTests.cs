using System.Collections.Immutable;
using System.Diagnostics;
using System.Text;
using ChannelAudit.Measures;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tests.Tables;

public sealed class TableTests
{
    private static readonly ImmutableArray<RecordingResult> Recordings = SampleResults.Run().Recordings;

    [Fact]
    public void VerdictsAreOneRowARecordingChannelAndTrial() => Golden.Match("verdicts.tsv", Text(VerdictsTsv.Render(Recordings)));

    [Fact]
    public void ChannelsCarryTheMeasuresOfTheWholeRecording() => Golden.Match("channels.tsv", Text(ChannelsTsv.Render(Recordings)));

    [Fact]
    public void AConditionThatTheProtocolExpectsAndNoTrialHasIsARowOfNothing()
    {
        RecordingResult recording = SampleResults.Faulty() with { ExpectedConditions = ["never shown"] };

        ConditionCount[] counts = [.. ConditionCounts.Of(recording).Where(count => string.Equals(count.Condition, "never shown", StringComparison.Ordinal))];

        Assert.Equal(recording.Channels.Select(channel => channel.Name), counts.Select(count => count.Channel), StringComparer.Ordinal);
        Assert.All(counts, count => Assert.Equal((0, 0, false), (count.Trials, count.Usable, count.Enough)));
    }

    [Fact]
    public void ConditionsCountOnlyScoredTrials() => Golden.Match("conditions.tsv", Text(ConditionsTsv.Render(Recordings)));

    [Fact]
    public void MeasuresAreTidy() => Golden.Match("measures.tsv", Text(MeasuresTsv.Render(SampleResults.Faulty())));

    [Fact]
    public void PairsAreOneRowAPairAndTrial() => Golden.Match("pairs.tsv", Text(PairsTsv.Render(SampleResults.Faulty())));

    [Fact]
    public void HostileLabelsStayText() => Golden.Match(
        "hostile.tsv",
        Text(ConditionsTsv.Render([SampleResults.Hostile() with { Channels = SampleResults.Hostile().Channels[..2] }]))
        + Text(PairsTsv.Render(SampleResults.Hostile())));

    [Fact]
    public void ACommaCultureChangesNoTable()
    {
        foreach (Func<byte[]> table in Tables(SampleResults.Faulty()))
        {
            Assert.Equal(Text(table()), Text(CommaCulture.Run(table)));
        }
    }

    [Fact]
    public void TablesHaveNoMarkNoCarriageReturnAndNoEmptyCell()
    {
        foreach (Func<byte[]> table in Tables(SampleResults.Faulty()))
        {
            byte[] bytes = table();
            string[] lines = Text(bytes).Split('\n');

            Assert.NotEqual(0xEF, bytes[0]);
            Assert.DoesNotContain((byte)'\r', bytes);
            Assert.Equal(string.Empty, lines[^1]);
            Assert.DoesNotContain(lines[..^1].SelectMany(line => line.Split('\t')), cell => cell.Length == 0);
            Assert.All(lines[..^1], line => Assert.Equal(lines[0].Split('\t').Length, line.Split('\t').Length));
        }
    }

    // The column lists of design.md, written out here a second time on purpose.
    [Fact]
    public void ColumnsAreThoseThatWereAgreed()
    {
        Assert.Equal("recording channel trial condition onset duration verdict reasons not_assessed final", string.Join(' ', TableColumns.Verdicts));
        Assert.Equal(
            "recording channel verdict reasons not_assessed final trials trials_pass trials_questionable trials_reject impedance "
            + string.Join(' ', MeasureCatalog.OfWholeRecordings.Select(measure => measure.Name)),
            string.Join(' ', TableColumns.Channels));
        Assert.Equal("recording participant channel condition trials pass questionable reject usable minimum enough group", string.Join(' ', TableColumns.Conditions));
        Assert.Equal("channel trial measure value unit grade questionable reject note", string.Join(' ', TableColumns.Measures));
        Assert.Equal("channel_a channel_b trial rho rho_high distance coherence gain_ab gain_ba", string.Join(' ', TableColumns.Pairs));
    }

    [Fact]
    public void AnUnlabelledRecordingHasOneConditionWithoutALabel()
    {
        ImmutableArray<ConditionCount> counts = ConditionCounts.Of(SampleResults.Blocks());

        Assert.Equal(2, counts.Length);
        Assert.All(counts, count => Assert.Null(count.Condition));
        Assert.All(counts, count => Assert.Equal(6, count.Trials));
    }

    // Cheek: happy 3 and 5 rejected, angry 4 rejected, the unlabelled 6 questionable (counted by hand in the sample); minimum 2.
    [Fact]
    public void UsableMeansNotRejected()
    {
        ConditionCount[] cheek = [.. ConditionCounts.Of(SampleResults.Faulty()).Where(count => string.Equals(count.Channel, "cheek", StringComparison.Ordinal))];

        Assert.Equal("angry happy none", string.Join(' ', cheek.Select(count => count.Condition ?? "none")));
        Assert.Equal([0, 0, 1], cheek.Select(count => count.Usable));
        Assert.All(cheek, count => Assert.False(count.Enough));
    }

    [Fact]
    public void ExactlyTheMinimumIsEnough() => Assert.True(new ConditionCount("cheek", "happy", 1, 1, 5, 2, 2).Enough);

    // An hour of four channels has 24 500 rows; the promise is below 100 ms, held here with room for a busy machine: the fastest of five.
    [Fact]
    public void AnHourOfMeasuresIsWrittenInAMoment()
    {
        RecordingResult hour = SampleResults.Large();
        TimeSpan fastest = TimeSpan.MaxValue;
        byte[] table = [];
        for (int run = 0; run < 5; run++)
        {
            Stopwatch watch = Stopwatch.StartNew();
            table = MeasuresTsv.Render(hour);
            fastest = watch.Elapsed < fastest ? watch.Elapsed : fastest;
        }

        Assert.True(table.AsSpan().Count((byte)'\n') > 24_000);
        Assert.True(fastest < TimeSpan.FromSeconds(1), fastest.ToString());
    }

    internal static IEnumerable<Func<byte[]>> Tables(RecordingResult recording) =>
    [
        () => VerdictsTsv.Render([recording]),
        () => ChannelsTsv.Render([recording]),
        () => ConditionsTsv.Render([recording]),
        () => MeasuresTsv.Render(recording),
        () => PairsTsv.Render(recording),
    ];

    private static string Text(byte[] utf8) => Encoding.UTF8.GetString(utf8);
}
