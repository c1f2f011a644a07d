using ChannelAudit.Reports.Stored;

namespace ChannelAudit.Reports.Tests.Stored;

public sealed class StoredNamesTests
{
    private static readonly StoredNames Names = new(
    [
        new StoredRecording("day1+p07", "day1/p07.edf", "a"), new StoredRecording("day2+p07", "day2/p07.edf", "b"), new StoredRecording("day2+P12.x", "day2/P12.x.csv", "c"),
        new StoredRecording("-p13", "-p13.edf", "d"),
    ]);

    [Theory]
    [InlineData("day1+p07", "day1+p07")]
    [InlineData("DAY1+P07", "day1+p07")]
    [InlineData("day1/p07.edf", "day1+p07")]
    [InlineData("day1/p07", "day1+p07")]
    [InlineData("day2\\p07.EDF", "day2+p07")]
    [InlineData("C:\\lab\\study\\day2\\p07.edf", "day2+p07")]
    [InlineData("./day2/p07.edf", "day2+p07")]
    [InlineData("P12.x.csv", "day2+P12.x")]
    [InlineData("p12.x", "day2+P12.x")]
    [InlineData("-p13", "-p13")]
    [InlineData("'-p13", "-p13")]
    public void ARecordingIsFoundByIdPathOrFileName(string given, string id) => Assert.Equal((id, null), (Names.Find(given).Found?.Id, Names.Find(given).Cause));

    [Theory]
    [InlineData("p07.edf", "\"p07.edf\" fits several recordings: day1+p07, day2+p07")]
    [InlineData("day1+p70", "the audit has no recording \"day1+p70\"; did you mean \"day1+p07\"?")]
    [InlineData("somebody else", "the audit has no recording \"somebody else\"")]
    [InlineData("''-p13", "the audit has no recording \"''-p13\"; did you mean \"-p13\"?")]
    public void WhatIsNotFoundOrNotCertainIsSaid(string given, string cause) => Assert.Equal((null, cause), (Names.Find(given).Found, Names.Find(given).Cause));

    [Fact]
    public void ANameOfNothingButApostrophesEndsNothing() =>
        Assert.StartsWith("the audit has no recording", Names.Find(new string('\'', 1_000_000)).Cause, StringComparison.Ordinal);
}
