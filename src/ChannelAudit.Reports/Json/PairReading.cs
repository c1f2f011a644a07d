using ChannelAudit.Results;

namespace ChannelAudit.Reports.Json;

/// <summary>Reads a pair of channels back.</summary>
internal static class PairReading
{
    /// <summary>One pair.</summary>
    public static PairResult Pair(JsonField field) => new()
    {
        ChannelA = field.Text("channel_a"),
        ChannelB = field.Text("channel_b"),
        Evidence = Evidence(field.Object("bridge")),
        Rows = field.List("rows", Row),
    };

    private static BridgeEvidence Evidence(JsonField field) => new()
    {
        Decision = field.Text("decision"),
        Why = field.Text("why"),
        Electrodes = field.TextOrNull("electrodes"),
        NotAssessed = field.TextOrNull("not_assessed"),
        RestSegments = field.Whole("rest_segments"),
        ActiveASegments = field.Whole("active_a_segments"),
        ActiveBSegments = field.Whole("active_b_segments"),
        RhoRest = field.NumberOrNull("rho_rest"),
        RhoHighRest = field.NumberOrNull("rho_high_rest"),
        ImaginaryRest = field.NumberOrNull("imaginary_rest"),
        RhoActiveA = field.NumberOrNull("rho_active_a"),
        RhoActiveB = field.NumberOrNull("rho_active_b"),
        GainAb = field.NumberOrNull("gain_ab"),
        GainBa = field.NumberOrNull("gain_ba"),
    };

    private static PairRow Row(JsonField field) => new(
        field.Text("trial"),
        field.NumberOrNull("rho"),
        field.NumberOrNull("rho_high"),
        field.NumberOrNull("distance"),
        field.NumberOrNull("coherence"),
        field.NumberOrNull("gain_ab"),
        field.NumberOrNull("gain_ba"),
        field.TextOrNull("note"));
}
