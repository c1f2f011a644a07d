using ChannelAudit.Findings;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tests.Wording;

public sealed class ReasonWordsTests
{
    [Fact]
    public void EveryReasonCodeHasItsWords()
    {
        Assert.All(ReasonCode.All, code => Assert.Contains(ReasonWords.For(code), ReasonWords.All));
        Assert.Equal(ReasonWords.All.Length, ReasonWords.All.Select(word => word.Code).Distinct(StringComparer.Ordinal).Count());
    }

    // The codes of design.md that only inform, written out a second time on purpose.
    [Theory]
    [InlineData("crosstalk")]
    [InlineData("common-source")]
    [InlineData("tonic-activity")]
    [InlineData("mouth-activity")]
    [InlineData("filter-mismatch")]
    [InlineData("events")]
    [InlineData("resting-level")]
    public void EveryCodeThatInformsHasItsWords(string code) => Assert.Contains(ReasonWords.All, word => string.Equals(word.Code, code, StringComparison.Ordinal));

    [Fact]
    public void AdviceThatNamesGelOrElectrodesCarriesTheCaution() => Assert.All(
        ReasonWords.All.Where(word => new[] { "gel", "electrode", "attach", "site;", "contact" }.Any(part => word.WhatToDo.Contains(part, StringComparison.OrdinalIgnoreCase))),
        word => Assert.True(word.TouchesSkin, word.Code));

    [Theory]
    [InlineData("Local protocol")]
    [InlineData("ethics approval")]
    [InlineData("equipment's instructions")]
    [InlineData("qualified staff")]
    [InlineData("not a medical device")]
    [InlineData("no alcohol")]
    public void TheCautionDefersToThoseWhoDecide(string part) => Assert.Contains(part, ReasonWords.Caution, StringComparison.Ordinal);

    [Theory]
    [InlineData("cheek", ReasonCode.LineNoise, "50 Hz mains 14.2 \u00B5V, 3 of 6 trials")]
    [InlineData("cheek", ReasonCode.Bridge, "may be joined with eye (correlation 0.185), 6 of 6 trials")]
    [InlineData("brow", ReasonCode.Drift, "baseline drift -1235 \u00B5V/min")]
    [InlineData("brow", ReasonCode.Pops, "pops")]
    public void AReasonIsSaidWithItsKeyNumber(string channel, string reason, string expected)
    {
        RecordingResult recording = SampleResults.Faulty();

        Assert.Equal(expected, ReasonPhrase.Of(recording, recording.Channels.Single(one => string.Equals(one.Name, channel, StringComparison.Ordinal)), reason));
    }
}
