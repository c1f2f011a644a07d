using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Json;

/// <summary>Pairs of channels and what decided about a bridge, in <c>result.json</c>.</summary>
internal static class PairJson
{
    /// <summary>Writes all pairs.</summary>
    public static void Write(JsonText text, ImmutableArray<PairResult> pairs)
    {
        Utf8JsonWriter json = text.Writer;
        json.WriteStartArray("pairs");
        foreach (PairResult pair in pairs)
        {
            json.WriteStartObject();
            json.WriteString("channel_a", pair.ChannelA);
            json.WriteString("channel_b", pair.ChannelB);
            WriteEvidence(json, pair.Evidence);
            text.Rows("rows", pair.Rows, WriteRow);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteEvidence(Utf8JsonWriter json, BridgeEvidence evidence)
    {
        json.WriteStartObject("bridge");
        json.WriteString("decision", evidence.Decision);
        json.WriteString("why", evidence.Why);
        json.WriteString("electrodes", evidence.Electrodes);
        json.WriteString("not_assessed", evidence.NotAssessed);
        json.WriteNumber("rest_segments", evidence.RestSegments);
        json.WriteNumber("active_a_segments", evidence.ActiveASegments);
        json.WriteNumber("active_b_segments", evidence.ActiveBSegments);
        json.WriteNumberOrNull("rho_rest", evidence.RhoRest);
        json.WriteNumberOrNull("rho_high_rest", evidence.RhoHighRest);
        json.WriteNumberOrNull("imaginary_rest", evidence.ImaginaryRest);
        json.WriteNumberOrNull("rho_active_a", evidence.RhoActiveA);
        json.WriteNumberOrNull("rho_active_b", evidence.RhoActiveB);
        json.WriteNumberOrNull("gain_ab", evidence.GainAb);
        json.WriteNumberOrNull("gain_ba", evidence.GainBa);
        json.WriteEndObject();
    }

    private static void WriteRow(Utf8JsonWriter json, PairRow row)
    {
        json.WriteStartObject();
        json.WriteString("trial", row.Trial);
        json.WriteNumberIfAny("rho", row.Rho);
        json.WriteNumberIfAny("rho_high", row.RhoHigh);
        json.WriteNumberIfAny("distance", row.Distance);
        json.WriteNumberIfAny("coherence", row.Coherence);
        json.WriteNumberIfAny("gain_ab", row.GainAb);
        json.WriteNumberIfAny("gain_ba", row.GainBa);
        json.WriteTextIfAny("note", row.Note);
        json.WriteEndObject();
    }
}
