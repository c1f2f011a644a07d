using ChannelAudit.Findings;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Wording;

public sealed class ReasonPhraseTests
{
    private static readonly Finding Share = SampleResults.Finding(
        ReasonCode.Drift, Grade.Questionable, ["brow"], null, 0, 65, [new Evidence("bad_share_low", 88.3, "%", 10)], "29 of 29 trials did not pass", "see the trials");

    [Fact]
    public void ASizeThatWasMeasuredSpeaksBeforeTheShareOfBadTrials()
    {
        RecordingResult recording = SampleResults.Faulty();
        ChannelResult brow = recording.Channels.Single(channel => channel.Name is "brow");
        brow = brow with { Findings = [Share, .. brow.Findings] };

        Assert.Equal("baseline drift -1235 µV/min", ReasonPhrase.Of(recording, brow, ReasonCode.Drift));
        Assert.Equal("the contact has not settled", ReasonPhrase.Worst(brow.Findings)!.Cause);
    }

    [Theory]
    [InlineData("bad_share")]
    [InlineData("bad_share_low")]
    public void AShareOfTrialsIsNotPrintedAsTheSizeOfTheFault(string measure)
    {
        RecordingResult recording = SampleResults.Faulty();
        ChannelResult brow = recording.Channels.Single(channel => channel.Name is "brow");
        brow = brow with { Findings = [Share with { Evidence = [new Evidence(measure, 88.3, "%", 10)] }] };

        Assert.Equal("baseline drift", ReasonPhrase.Of(recording, brow, ReasonCode.Drift));
    }
}
