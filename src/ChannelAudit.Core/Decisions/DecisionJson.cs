using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Decisions;

/// <summary>A decision as a line of JSON: its fields in one order, all of them always there; described by <c>docs/schemas/decision.schema.json</c>.</summary>
/// <remarks>The strict encoder leaves ASCII only: no label or reason can end a line, leave its string or act as markup.</remarks>
internal static class DecisionJson
{
    /// <summary>Names the layout of a line.</summary>
    public const string Format = "channelaudit-decision/1";

    private const string TimeFormat = "yyyy-MM-dd'T'HH:mm:ss'Z'";

    /// <summary>The whole line with its hash, without a line end.</summary>
    public static byte[] Render(Decision decision)
    {
        ArrayBufferWriter<byte> text = new();
        using (Utf8JsonWriter json = new(text, new JsonWriterOptions { Encoder = JavaScriptEncoder.Default }))
        {
            json.WriteStartObject();
            WriteHead(json, decision);
            WriteSubject(json, decision);
            WriteGrade(json, "verdict", decision.Verdict);
            json.WriteString("reason", decision.Reason);
            WriteNumber(json, "withdraws", decision.Withdraws);
            WriteComputed(json, decision.Computed);
            json.WriteString("recording_sha256", decision.RecordingSha256);
            json.WriteString("criteria_sha256", decision.CriteriaSha256);
            json.WriteString("origin", decision.Origin);
            json.WriteBoolean("blind", decision.Blind);
            json.WriteEndObject();
        }

        // The closing brace comes behind the hash.
        return LedgerChain.Seal(text.WrittenSpan[..^1]);
    }

    /// <summary>Reads a line whose hash is right.</summary>
    /// <returns>The decision, or in words what is wrong with it.</returns>
    public static (Decision? Decision, string Fault) Read(ReadOnlyMemory<byte> line)
    {
        try
        {
            using JsonDocument document = StrictJson.Parse(line);
            JsonElement root = document.RootElement;
            if (root.GetProperty("format").GetString() is not Format)
            {
                return (null, $"its format is not '{Format}'");
            }

            Decision decision = Of(root);

            // A key that stands twice, or one more, would be read differently by different programs.
            return Render(decision).AsSpan().SequenceEqual(line.Span) ? (decision, string.Empty) : (null, "not written by channelaudit");
        }
        catch (JsonException)
        {
            return (null, "not JSON");
        }
        catch (Exception fault) when (fault is InvalidOperationException or KeyNotFoundException or FormatException or ArgumentException)
        {
            return (null, "a value is missing or of the wrong kind");
        }
    }

    private static void WriteHead(Utf8JsonWriter json, Decision decision)
    {
        json.WriteString("format", Format);
        json.WriteNumber("n", decision.Number);
        json.WriteString("previous", decision.Previous);
        json.WriteString("at", decision.At.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture));
        json.WriteString("by", decision.By);
        json.WriteString("action", decision.Action == DecisionAction.Withdraw ? "withdraw" : "decide");
    }

    private static void WriteSubject(Utf8JsonWriter json, Decision decision)
    {
        json.WriteString("recording", decision.Recording);
        json.WriteString("channel", decision.Channel);
        WriteNumber(json, "trial", decision.Trial?.Number);
        WriteNumber(json, "onset_s", decision.Trial?.OnsetS);
        WriteNumber(json, "duration_s", decision.Trial?.DurationS);
        json.WriteString("label", decision.Trial?.Label);
    }

    private static void WriteComputed(Utf8JsonWriter json, ImmutableArray<ComputedVerdict> computed)
    {
        json.WriteStartArray("computed");
        foreach (ComputedVerdict one in computed)
        {
            json.WriteStartObject();
            json.WriteString("channel", one.Channel);
            WriteGrade(json, "verdict", one.Verdict);
            json.WriteStartArray("reasons");
            foreach (string reason in one.Reasons)
            {
                json.WriteStringValue(reason);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteGrade(Utf8JsonWriter json, string name, Grade? grade) => json.WriteString(name, grade is { } known ? GradeCode.Of(known) : null);

    private static void WriteNumber(Utf8JsonWriter json, string name, decimal? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, number);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static Decision Of(JsonElement root) => new()
    {
        Number = root.GetProperty("n").GetInt32(),
        Previous = root.GetProperty("previous").GetString()!,
        At = DateTimeOffset.ParseExact(root.GetProperty("at").GetString()!, TimeFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal),
        By = root.GetProperty("by").GetString()!,
        Action = root.GetProperty("action").GetString() switch
        {
            "decide" => DecisionAction.Decide,
            "withdraw" => DecisionAction.Withdraw,
            _ => throw new FormatException(),
        },
        Recording = root.GetProperty("recording").GetString(),
        Channel = root.GetProperty("channel").GetString(),
        Trial = Trial(root),
        Verdict = Grade(root.GetProperty("verdict")),
        Reason = root.GetProperty("reason").GetString()!,
        Withdraws = root.GetProperty("withdraws") is { ValueKind: not JsonValueKind.Null } withdraws ? withdraws.GetInt32() : null,
        Computed =
        [
            .. root.GetProperty("computed").EnumerateArray().Select(one => new ComputedVerdict(
                one.GetProperty("channel").GetString()!,
                Grade(one.GetProperty("verdict")) ?? throw new FormatException(),
                [.. one.GetProperty("reasons").EnumerateArray().Select(reason => reason.GetString()!)])),
        ],
        RecordingSha256 = root.GetProperty("recording_sha256").GetString(),
        CriteriaSha256 = root.GetProperty("criteria_sha256").GetString(),
        Origin = root.GetProperty("origin").GetString()!,
        Blind = root.GetProperty("blind").GetBoolean(),
        Sha256 = root.GetProperty("sha256").GetString()!,
    };

    private static DecidedTrial? Trial(JsonElement root) => root.GetProperty("trial") is not { ValueKind: not JsonValueKind.Null } number
        ? null
        : new DecidedTrial(number.GetInt32(), root.GetProperty("onset_s").GetDecimal(), root.GetProperty("duration_s").GetDecimal(), root.GetProperty("label").GetString());

    private static Grade? Grade(JsonElement field) => field.GetString() is not { } word ? null : GradeCode.From(word) ?? throw new FormatException();
}
