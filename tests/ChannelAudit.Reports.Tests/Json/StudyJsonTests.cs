using System.Text.Json;
using System.Text.Json.Nodes;
using ChannelAudit.Reports.Json;
using ChannelAudit.Results;
using ChannelAudit.Studies;
using ChannelAudit.TestKit;
using Json.Schema;

namespace ChannelAudit.Reports.Tests.Json;

public sealed class StudyJsonTests
{
    [Fact]
    public void TheSummaryOfAChannelIsReadBackAsItWas()
    {
        byte[] written = Written();
        RecordingResult read = ResultReader.Read(written, "result.json").Result;

        Assert.Equal(JsonSerializer.Serialize(SampleStudy.Signal), JsonSerializer.Serialize(read.Channels[0].Signal));
        Assert.Null(read.Channels[1].Signal);
        Assert.Equal(written, ResultWriter.Render(read, Origin));
    }

    [Fact]
    public void TheSummaryFollowsTheSchema()
    {
        JsonSchema schema = Schema("result");
        JsonNode node = JsonNode.Parse(Written())!;

        Assert.True(schema.Evaluate(node.Deserialize<JsonElement>()).IsValid);
        node["channels"]![0]!["signal"]!["print"] = "not hexadecimal";
        Assert.False(schema.Evaluate(node.Deserialize<JsonElement>()).IsValid);
    }

    [Fact]
    public void AWrongSummaryIsRefusedWithItsPlace()
    {
        JsonNode node = JsonNode.Parse(Written())!;
        node["channels"]![0]!["signal"]!["notches_hz"] = JsonNode.Parse("[\"50\"]");

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => ResultReader.Read(JsonSerializer.SerializeToUtf8Bytes(node), "result.json"));

        Assert.Contains("channels[0].signal.notches_hz", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsOddFollowsTheSchemaOfTheRun()
    {
        JsonSchema schema = Schema("audit");
        JsonNode audit = JsonNode.Parse(SampleResults.Run().Json())!;
        audit["odd"] = Odd().DeepClone();

        Assert.True(schema.Evaluate(audit.Deserialize<JsonElement>()).IsValid);
        audit["odd"]![0]!["kind"] = "strange";
        Assert.False(schema.Evaluate(audit.Deserialize<JsonElement>()).IsValid);
    }

    [Fact]
    public void EveryKindIsInTheSchema() => Assert.Equal(
        OddKind.All.Order(StringComparer.Ordinal),
        JsonNode.Parse(SchemaText("audit"))!["properties"]!["odd"]!["items"]!["properties"]!["kind"]!["enum"]!.AsArray().Select(kind => kind!.GetValue<string>()).Order(StringComparer.Ordinal));

    private static ResultOrigin Origin => new("0.1.0", SampleResults.CriteriaSha256, null);

    private static byte[] Written()
    {
        RecordingResult result = SampleResults.Clean("p1");
        return ResultWriter.Render(result with { Channels = [result.Channels[0] with { Signal = SampleStudy.Signal }, result.Channels[1]] }, Origin);
    }

    private static JsonNode Odd()
    {
        using JsonText text = new();
        text.Writer.WriteStartObject();
        StudyJson.Write(text, SampleStudy.Odd);
        text.Writer.WriteEndObject();
        return JsonNode.Parse(text.ToArray())!["odd"]!;
    }

    private static JsonSchema Schema(string name) => JsonSchema.FromText(SchemaText(name), new BuildOptions { SchemaRegistry = new SchemaRegistry() });

    private static string SchemaText(string name) => File.ReadAllText(RepositoryRoot.Fixture($"../docs/schemas/{name}.schema.json"));
}
