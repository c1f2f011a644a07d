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
    [InlineData(ReasonCode.Clipping, "clipped", "clipping in 3.33 % of samples")]
    [InlineData(ReasonCode.Clipping, "peak_use", "clipping (peaks use 3.33 % of the range)")]
    [InlineData(ReasonCode.Flatline, "flat", "flat signal in 3.33 % of samples")]
    [InlineData(ReasonCode.Dropout, "missing", "3.33 % of samples missing")]
    public void AShareSaysOfWhat(string reason, string measure, string expected)
    {
        RecordingResult recording = SampleResults.Faulty();
        ChannelResult brow = recording.Channels.Single(channel => channel.Name is "brow");
        Finding finding = SampleResults.Finding(reason, Grade.Reject, ["brow"], null, 0, 65, [new Evidence(measure, 3.3256, "%", 1)], "seen", "unknown");

        Assert.Equal(expected, ReasonPhrase.Of(recording, brow, finding));
    }

    [Theory]
    [InlineData("line_effect", 279.3, "50 Hz mains (adds 279 % to the score)")]
    [InlineData("line_effect", 9900, "50 Hz mains (adds more than 9900 % to the score)")]
    [InlineData("flat_effect", -12.0, "50 Hz mains (takes 12 % from the score)")]
    public void AnEffectIsWhatIsAddedToTheScoreWithoutTheFault(string measure, double percent, string expected)
    {
        RecordingResult recording = SampleResults.Faulty();
        ChannelResult brow = recording.Channels.Single(channel => channel.Name is "brow");
        Finding finding = SampleResults.Finding(ReasonCode.LineNoise, Grade.Reject, ["brow"], null, 0, 65, [new Evidence(measure, percent, "%", 60)], "seen", "unknown");

        Assert.Equal(expected, ReasonPhrase.Of(recording, brow, finding));
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
