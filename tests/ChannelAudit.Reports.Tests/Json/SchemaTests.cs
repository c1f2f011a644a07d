using System.Text.Json;
using System.Text.Json.Nodes;
using ChannelAudit.Excerpts;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Bundles;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Methods;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Results;
using ChannelAudit.Setup;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;
using Json.Schema;

namespace ChannelAudit.Reports.Tests.Json;

/// <summary>Outputs against their schemas, judged by JsonSchema.Net, a general-purpose library.</summary>
public sealed class SchemaTests
{
    private static readonly JsonSchema ResultSchema = JsonSchema.FromText(SchemaText("result"));
    private static readonly JsonSchema AuditSchema = JsonSchema.FromText(SchemaText("audit"));
    private static readonly JsonSchema BundleSchema = JsonSchema.FromText(SchemaText("bundle"));
    private static readonly JsonSchema MethodsSchema = JsonSchema.FromText(SchemaText("methods"));

    [Fact]
    public void ResultsFollowTheirSchema()
    {
        foreach (RecordingResult result in new[] { SampleResults.Faulty(), SampleResults.Blocks(), SampleResults.Hostile() })
        {
            RequireValid(ResultSchema, ResultWriter.Render(result, new ResultOrigin("0.1.0", SampleResults.CriteriaSha256, new string('5', 64))));
        }
    }

    [Fact]
    public void AuditsFollowTheirSchema() => RequireValid(
        AuditSchema, SampleResults.Run().Json(new OutputFile("verdicts.tsv", new string('0', 64))));

    [Fact]
    public void MethodsParagraphsFollowTheirSchema()
    {
        SampleRun run = SampleResults.Run();
        foreach (SampleRun some in new[] { run, run with { Recordings = [] }, SampleResults.Run(SampleResults.Hostile()) })
        {
            MethodsTally tally = new() { Unread = some.Unread.Length };
            some.Recordings.ToList().ForEach(tally.Add);
            tally.Fairness = some.Digest.Fairness;
            RequireValid(MethodsSchema, MethodsJson.Render(tally, new MethodsOrigin(some.Version, some.Criteria, new StoredInput("setup.toml", new string('5', 64)), new StoredInput(null, null))));
        }
    }

    [Fact]
    public void IndexesOfBundlesFollowTheirSchema()
    {
        ChannelFacts cheek = new() { Name = "cheek", Rate = new Rational(2048, 1), IsMicrovolts = true, NominalHz = 50, LineHz = 49.98, Notched = [1, 3] };
        ChannelFacts brow = cheek with { Name = "brow", UnitDoubt = "no unit", LowpassHz = 400, Scoring = new ScoringSetup { HighpassHz = 20, NotchesHz = [50] } };
        BundleIndex index = new()
        {
            Version = "0.1.0",
            CriteriaSha256 = new string('0', 64),
            Least = Grade.Questionable,
            Recordings = [new BundleRecording("P07", [cheek, brow])],
            Exclusions = [new Exclusion("P07", "cheek", null, Grade.Reject, Grade.Reject, ["line-noise"]), new Exclusion("P07", "brow", 3, Grade.Pass, Grade.Reject, [])],
            Blocks = [new BundleBlock("samples/1-P07/2-brow/3.f64", "P07", "brow", 3, [(0, 100), (120, 30)])],
            Omitted = [new BundleOmission("P07", "cheek", 4)],
            Entries = [new BundleEntry("samples/1-P07/2-brow/3.f64", new string('a', 64), 1040)],
        };
        byte[] rendered = BundleJson.Render(index);

        RequireValid(BundleSchema, rendered);
        Assert.Equal(rendered, BundleJson.Render(BundleReading.Read(rendered, "bundle.json")));
        JsonNode other = JsonNode.Parse(rendered)!;
        other["omitted"] = null;
        Assert.False(BundleSchema.Evaluate(other.Deserialize<JsonElement>()).IsValid);
    }

    [Theory]
    [InlineData("format", "\"another/1\"")]
    [InlineData("duration_s", "\"long\"")]
    [InlineData("surprise", "1")]
    public void TheSchemaRefusesWhatIsNotAgreed(string property, string value)
    {
        JsonNode node = JsonNode.Parse(ResultWriter.Render(SampleResults.Clean("x"), new ResultOrigin("0.1.0", "0", null)))!;
        node[property] = JsonNode.Parse(value);

        Assert.False(ResultSchema.Evaluate(node.Deserialize<JsonElement>()).IsValid);
    }

    [Theory]
    [InlineData("result")]
    [InlineData("audit")]
    [InlineData("methods")]
    [InlineData("decision")]
    [InlineData("bundle")]
    [InlineData("share")]
    public void EveryPropertyIsDescribed(string name)
    {
        List<string> bare = [];
        Collect(JsonNode.Parse(SchemaText(name))!, "$", bare);

        Assert.Empty(bare);
    }

    private static void Collect(JsonNode node, string path, List<string> bare)
    {
        if (node is JsonObject schema)
        {
            if (schema["properties"] is JsonObject properties)
            {
                bare.AddRange(properties
                    .Where(property => string.IsNullOrWhiteSpace(property.Value!["description"]?.GetValue<string>()))
                    .Select(property => $"{path}.{property.Key}"));
            }

            foreach ((string key, JsonNode? child) in schema)
            {
                if (child is not null)
                {
                    Collect(child, $"{path}.{key}", bare);
                }
            }
        }
        else if (node is JsonArray list)
        {
            foreach (JsonNode? child in list)
            {
                Collect(child!, path, bare);
            }
        }
    }

    private static void RequireValid(JsonSchema schema, byte[] utf8)
    {
        using JsonDocument document = JsonDocument.Parse(utf8);
        EvaluationResults found = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        string faults = string.Join('\n', (found.Details ?? [])
            .Where(detail => detail.Errors is not null)
            .SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}")));
        Assert.True(found.IsValid, faults);
    }

    private static string SchemaText(string name) => File.ReadAllText(RepositoryRoot.Fixture($"../docs/schemas/{name}.schema.json"));
}
