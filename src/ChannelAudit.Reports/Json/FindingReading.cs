using ChannelAudit.Findings;

namespace ChannelAudit.Reports.Json;

/// <summary>Reads a finding back.</summary>
internal static class FindingReading
{
    /// <summary>One finding.</summary>
    public static Finding Finding(JsonField field) => new()
    {
        Reason = field.Text("reason"),
        Grade = field.Grade("grade"),
        Channels = field.Texts("channels"),
        Trial = field.WholeOrNull("trial"),
        InBaseline = field.Flag("in_baseline"),
        FromQuietStretches = field.Flag("from_quiet_stretches"),
        FromS = field.Number("from_s"),
        ToS = field.Number("to_s"),
        Evidence = field.List("evidence", evidence => new Evidence(
            evidence.Text("measure"), evidence.Number("value"), evidence.Text("unit"), evidence.Number("limit"))),
        Effect = field.ObjectOrNull("effect") is { } effect
            ? new ScoreEffect(effect.NumberOrNull("uv"), effect.NumberOrNull("percent"), effect.NumberOrNull("without_uv"), effect.TextOrNull("note"))
            : null,
        Text = field.Text("text"),
        Cause = field.Text("cause"),
    };
}
