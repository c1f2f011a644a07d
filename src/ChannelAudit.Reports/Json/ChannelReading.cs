using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Measures;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Json;

/// <summary>Reads a channel and its cells back.</summary>
internal static class ChannelReading
{
    /// <summary>One channel.</summary>
    public static ChannelResult Channel(JsonField field) => new()
    {
        Name = field.Text("name"),
        Label = field.Text("label"),
        RateHz = field.Number("rate_hz"),
        BandFromHz = field.Number("band_from_hz"),
        BandToHz = field.Number("band_to_hz"),
        Verdict = field.Grade("verdict"),
        Reasons = field.Texts("reasons"),
        NotAssessed = Missing(field),
        Measures = Measures(field, "measures"),
        Findings = field.List("findings", FindingReading.Finding),
        Signal = field.ObjectOrNull("signal") is { } signal ? SignalJson.Read(signal) : null,
        Cells = field.List("cells", Cell),
    };

    private static CellResult Cell(JsonField field) => new()
    {
        Trial = field.Whole("trial"),
        Verdict = field.Grade("verdict"),
        Reasons = field.Texts("reasons"),
        NotAssessed = Missing(field),
        Measures = Measures(field, "measures"),
        BaselineMeasures = Measures(field, "baseline_measures"),
        Findings = field.List("findings", FindingReading.Finding),
    };

    private static ImmutableArray<NotAssessed> Missing(JsonField field) =>
        field.List("not_assessed", missing => new NotAssessed(missing.Text("reason"), missing.Text("cause")));

    private static ImmutableArray<GradedMeasure> Measures(JsonField field, string name) => field.List(name, Measure);

    private static GradedMeasure Measure(JsonField field)
    {
        string name = field.Text("measure");

        // The catalog's own name, so that thousands of rows share one string.
        return MeasureCatalog.Contains(name)
            ? new GradedMeasure(
                new MeasureValue(MeasureCatalog.Get(name).Name, field.NumberOrNull("value"), field.TextOrNull("note")),
                field.GradeOrNull("grade"),
                field.NumberOrNull("questionable"),
                field.NumberOrNull("reject"))
            : throw field.Wrong("measure", "a measure that this version knows");
    }
}
