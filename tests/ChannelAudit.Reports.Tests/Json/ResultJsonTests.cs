using System.Text;
using System.Text.Json;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Tests.Tables;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tests.Json;

public sealed class ResultJsonTests
{
    private static readonly ResultOrigin Origin = new("0.1.0", SampleResults.CriteriaSha256, null);

    public static TheoryData<string> Samples => ["faulty", "clean", "blocks", "hostile"];

    [Theory]
    [MemberData(nameof(Samples))]
    public void TablesOfAResultReadBackAreTheSameBytes(string sample)
    {
        RecordingResult result = Sample(sample);

        RecordingResult back = ResultReader.Read(ResultWriter.Render(result, Origin), "result.json").Result;

        Func<byte[]>[] expected = [.. TableTests.Tables(result)];
        Func<byte[]>[] found = [.. TableTests.Tables(back)];
        Assert.All(expected.Zip(found), pair => Assert.Equal(pair.First(), pair.Second()));
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void AResultReadBackIsWrittenAsTheSameBytes(string sample)
    {
        byte[] first = ResultWriter.Render(Sample(sample), Origin);

        StoredResult back = ResultReader.Read(first, "result.json");

        Assert.Equal(first, ResultWriter.Render(back.Result, back.Origin));
        Assert.Equal(Origin, back.Origin);
    }

    [Fact]
    public void TheFileIsAsAgreed() => Golden.Match("result.json", Encoding.UTF8.GetString(ResultWriter.Render(SampleResults.Faulty(), Origin)));

    [Fact]
    public void ACommaCultureChangesNothing() => Assert.Equal(
        ResultWriter.Render(SampleResults.Faulty(), Origin),
        CommaCulture.Run(() => ResultWriter.Render(SampleResults.Faulty(), Origin)));

    [Fact]
    public void LabelsCannotActAsMarkup()
    {
        string json = Encoding.UTF8.GetString(ResultWriter.Render(SampleResults.Hostile(), Origin));

        Assert.DoesNotContain("<script", json, StringComparison.OrdinalIgnoreCase);
        Assert.All(json, character => Assert.True(character is '\n' or (>= ' ' and < '\x7F')));
    }

    [Fact]
    public void ANumberThatIsNoneIsRefused() => Assert.Throws<ArgumentException>(
        () => ResultWriter.Render(SampleResults.Faulty() with { DurationS = double.NaN }, Origin));

    [Theory]
    [InlineData("", "result.json, line 1: not JSON")]
    [InlineData("{\n\"format\": ,", "result.json, line 2: not JSON")]
    [InlineData("[]", "result.json, format: 'Array' instead of 'channelaudit-result/1'")]
    [InlineData("{}", "result.json, format: 'none' instead of 'channelaudit-result/1'")]
    [InlineData("{\"format\": \"channelaudit-result/9\"}", "result.json, format: 'channelaudit-result/9' instead of 'channelaudit-result/1'")]
    [InlineData("{\"format\": \"channelaudit-result/1\"}", "result.json, version: not a text")]
    public void AnotherFileIsRefusedInOneLine(string text, string message)
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(
            () => ResultReader.Read(Encoding.UTF8.GetBytes(text), "result.json"));

        Assert.Equal(message, fault.Message);
        Assert.NotEmpty(fault.Hint);
    }

    [Theory]
    [InlineData("\"verdict\": \"reject\"", "\"verdict\": \"fine\"", "result.json, channels[0].verdict: not pass, questionable or reject")]
    [InlineData("\"duration_s\": 65.5", "\"duration_s\": \"65.5\"", "result.json, duration_s: not a number")]
    [InlineData("\"number\":4,", "\"number\":4.5,", "result.json, trials[3].number: not a whole number")]
    [InlineData("\"role\":\"rest\"", "\"role\":\"nap\"", "result.json, trials[0].role: not scored, rest or task")]
    [InlineData("\"measure\":\"narrow_hz\"", "\"measure\":\"colour\"", "result.json, channels[0].measures[6].measure: not a measure that this version knows")]
    [InlineData("\"number\":4,", "\"number\":3,", "result.json, trials: not a list with each number once")]
    [InlineData("\"number\":4,", "\"number\":40,", "result.json, channels: not a list whose cells name trials of this recording")]
    public void AWrongValueIsReportedWithItsPlace(string there, string instead, string message)
    {
        string text = Encoding.UTF8.GetString(ResultWriter.Render(SampleResults.Faulty(), Origin));
        int place = text.IndexOf(there, StringComparison.Ordinal);
        string changed = text[..place] + instead + text[(place + there.Length)..];

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(
            () => ResultReader.Read(Encoding.UTF8.GetBytes(changed), "result.json"));

        Assert.Equal(message, fault.Message);
    }

    [Fact]
    public void EveryMeasureRowStandsOnALineOfItsOwn()
    {
        string text = Encoding.UTF8.GetString(ResultWriter.Render(SampleResults.Faulty(), Origin));

        string[] rows = [.. text.Split('\n').Where(line => line.TrimStart().StartsWith("{\"measure\":\"line_rms\"", StringComparison.Ordinal))];

        // Three channels with six trials and the whole recording each, and three baselines.
        Assert.Equal((3 * 7) + 3, rows.Length);
        using JsonDocument document = JsonDocument.Parse(text);
        Assert.Equal(JsonValueKind.Object, document.RootElement.ValueKind);
    }

    private static RecordingResult Sample(string name) => name switch
    {
        "faulty" => SampleResults.Faulty(),
        "clean" => SampleResults.Clean("day1+p08"),
        "blocks" => SampleResults.Blocks(),
        _ => SampleResults.Hostile(),
    };
}
