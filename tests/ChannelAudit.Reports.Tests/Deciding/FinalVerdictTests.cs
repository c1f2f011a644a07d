using ChannelAudit.Decisions;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Deciding;

/// <summary>Which decision holds for what. Computed: cheek reject with trials 3 to 5 reject and the others questionable; brow questionable with trials that pass; eye pass.</summary>
public sealed class FinalVerdictTests : IDisposable
{
    private readonly DecidedRun _run = new();

    public void Dispose() => _run.Dispose();

    [Fact]
    public void WithoutDecisionsItIsTheComputedOne()
    {
        Assert.Null(_run.With().Decisions);
        Assert.Equal((Grade.Reject, "QQRRRQ"), (Channel("cheek"), Trials("cheek")));
    }

    [Fact]
    public void OneOnACellChangesThatCellOnly()
    {
        _run.Decide("cheek", 3, Grade.Pass);

        Assert.Equal((Grade.Reject, "QQPRRQ"), (Channel("cheek"), Trials("cheek")));
        Assert.Equal("PPPPPP", Trials("brow"));
    }

    [Fact]
    public void OneOnATrialHoldsInAllChannelsAndForNoChannelItself()
    {
        _run.Decide(null, 2, Grade.Reject);

        Assert.Equal(("QRRRRQ", "PRPPPP", "PRPPPQ"), (Trials("cheek"), Trials("brow"), Trials("eye")));
        Assert.Equal((Grade.Reject, Grade.Questionable, Grade.Pass), (Channel("cheek"), Channel("brow"), Channel("eye")));
    }

    [Theory]
    [InlineData(Grade.Reject, "RRRRRR")]
    [InlineData(Grade.Questionable, "QQQQQQ")]
    [InlineData(Grade.Pass, "PPPPPQ")]
    public void OneOnAChannelMakesItsTrialsWorseAndNeverBetter(Grade verdict, string trials)
    {
        _run.Decide("eye", null, verdict);

        Assert.Equal((verdict, trials), (Channel("eye"), Trials("eye")));
        Assert.Equal("PPPPPP", Trials("brow"));
    }

    [Fact]
    public void APassOnARejectedChannelLeavesItsBadTrialsBad()
    {
        _run.Decide("cheek", null, Grade.Pass);

        Assert.Equal((Grade.Pass, "QQRRRQ"), (Channel("cheek"), Trials("cheek")));
    }

    [Fact]
    public void CellComesBeforeTrialAndTrialBeforeChannelWhateverTheirOrder()
    {
        _run.Decide("eye", 1, Grade.Pass);
        _run.Decide(null, 1, Grade.Reject);
        _run.Decide(null, 2, Grade.Pass);
        _run.Decide("eye", null, Grade.Questionable);

        Assert.Equal((Grade.Questionable, "PPQQQQ"), (Channel("eye"), Trials("eye")));
        Assert.Equal("RPPPPP", Trials("brow"));
    }

    [Fact]
    public void TheLaterOfEqualsHoldsAndAWithdrawalBringsTheEarlierBack()
    {
        _run.Decide("cheek", 3, Grade.Pass);
        _run.Decide("cheek", 3, Grade.Questionable);
        RecordingResult two = _run.With();
        _run.Withdraw(2);
        RecordingResult one = _run.With();
        _run.Withdraw(1);

        Assert.Equal((Grade.Questionable, Grade.Pass, Grade.Reject), (Cell3(two), Cell3(one), Cell3(_run.With())));
        Assert.Equal([(DecisionState.Superseded, "by 2"), (DecisionState.InForce, string.Empty)], two.Decisions!.All.Select(decision => (decision.State, decision.Note)));
        Assert.Equal([(DecisionState.InForce, string.Empty), (DecisionState.Withdrawn, "by 3")], one.Decisions!.All.Select(decision => (decision.State, decision.Note)));
    }

    [Fact]
    public void ABlindOneHoldsWhereNobodyElseHasDecided()
    {
        _run.Decide("cheek", 3, Grade.Questionable, blind: true);
        _run.Decide("cheek", 3, Grade.Pass, by: "S. Econd", blind: true);

        Assert.Equal("QQPRRQ", Trials("cheek"));
    }

    [Theory]
    [InlineData("cheek", 3)]
    [InlineData(null, 3)]
    [InlineData("cheek", null)]
    public void ABlindOneNeverTakesThePlaceOfOneMadeWithEverythingInView(string? channel, int? trial)
    {
        _run.Decide("cheek", 1, Grade.Questionable, blind: true);
        _run.Decide(channel, trial, Grade.Reject);
        _run.Decide("cheek", 3, Grade.Pass, by: "S. Econd", blind: true);

        Assert.Equal('R', Trials("cheek")[2]);
        _run.Withdraw(2);
        Assert.Equal('P', Trials("cheek")[2]);
    }

    [Fact]
    public void ABlindOneAboutTheSameIsSupersededWhicheverCameFirst()
    {
        _run.Decide("cheek", 3, Grade.Pass, blind: true);
        _run.Decide("cheek", 3, Grade.Questionable);
        _run.Decide("cheek", 3, Grade.Pass, by: "S. Econd", blind: true);

        Assert.Equal(
            [(DecisionState.Superseded, "by 2"), (DecisionState.InForce, string.Empty), (DecisionState.Superseded, "by 2")],
            _run.With().Decisions!.All.Select(decision => (decision.State, decision.Note)));
    }

    [Fact]
    public void ADecisionNeverErasesTheComputedVerdict()
    {
        _run.Decide("cheek", null, Grade.Pass);
        _run.Decide("cheek", 3, Grade.Pass);

        RecordingResult decided = _run.With();

        Assert.Equal((Grade.Reject, Grade.Reject), (decided.Channels[0].Verdict, decided.Channels[0].Cells[2].Verdict));
    }

    [Fact]
    public void OtherRecordingsAreLeftAlone()
    {
        _run.Decide("brow", null, Grade.Reject);

        Assert.Null(_run.With(SampleResults.Clean("day1+p08")).Decisions);
    }

    private static Grade Cell3(RecordingResult recording) => FinalVerdict.OfTrial(recording, recording.Channels[0], recording.Channels[0].Cells[2]);

    private Grade Channel(string name)
    {
        RecordingResult recording = _run.With();
        return FinalVerdict.OfChannel(recording, recording.Channels.Single(channel => string.Equals(channel.Name, name, StringComparison.Ordinal)));
    }

    private string Trials(string name)
    {
        RecordingResult recording = _run.With();
        ChannelResult channel = recording.Channels.Single(one => string.Equals(one.Name, name, StringComparison.Ordinal));
        return string.Concat(channel.Cells.Select(cell => FinalVerdict.OfTrial(recording, channel, cell).ToString()[0]));
    }
}
