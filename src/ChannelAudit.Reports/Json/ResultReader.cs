using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Output;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Json;

/// <summary>Reads <c>result.json</c> back, to the same tables byte for byte.</summary>
public static class ResultReader
{
    /// <summary>Reads the bytes of a <c>result.json</c>.</summary>
    /// <param name="utf8">The file's bytes.</param>
    /// <param name="file">Its name, for messages.</param>
    /// <exception cref="ChannelAuditException">When it is not JSON, of another layout, or a value is missing or of the wrong kind.</exception>
    public static StoredResult Read(ReadOnlyMemory<byte> utf8, string file)
    {
        using JsonDocument document = Parse(utf8, file);
        JsonField root = new(document.RootElement, file, string.Empty);
        if (document.RootElement.ValueKind != JsonValueKind.Object)
        {
            throw OutputErrors.OtherLayout(file, document.RootElement.ValueKind.ToString(), ResultWriter.Format);
        }

        string format = root.TextOrNull("format") ?? "none";
        if (!string.Equals(format, ResultWriter.Format, StringComparison.Ordinal))
        {
            throw OutputErrors.OtherLayout(file, format, ResultWriter.Format);
        }

        ResultOrigin origin = new(root.Text("version"), root.Text("criteria_sha256"), root.TextOrNull("setup_sha256"));
        RecordingResult result = Recording(root);
        RequireTrials(result, root);
        return new StoredResult(origin, result);
    }

    private static JsonDocument Parse(ReadOnlyMemory<byte> utf8, string file)
    {
        try
        {
            return StrictJson.Parse(utf8);
        }
        catch (JsonException exception)
        {
            throw OutputErrors.NotJson(file, (exception.LineNumber ?? 0) + 1, exception);
        }
    }

    private static RecordingResult Recording(JsonField root)
    {
        JsonField mains = root.Object("mains");
        return new RecordingResult
        {
            Id = root.Text("id"),
            Path = root.Text("path"),
            Sha256 = root.Text("sha256"),
            Format = root.Text("recording_format"),
            DurationS = root.Number("duration_s"),
            Participant = root.TextOrNull("participant"),
            Group = root.TextOrNull("group"),
            Mains = new MainsResult(mains.Number("nominal_hz"), mains.Number("hz"), mains.Text("origin")),
            Scoring = root.TextOrNull("scoring"),
            TrialsFrom = root.Text("trials_from"),
            MinimumTrials = root.Whole("minimum_trials"),
            ExpectedConditions = root.TextsOrNone("expected_conditions"),
            Gaps = root.List("gaps", field => new RecordedGap(field.Number("from_s"), field.Number("to_s"))),
            Trials = Trials(root),
            Channels = root.List("channels", ChannelReading.Channel),
            Skipped = root.List("skipped", field => new SkippedChannel(field.Text("label"), field.Text("cause"))),
            Pairs = root.List("pairs", PairReading.Pair),
            Impedance = root.ObjectOrNull("impedance") is { } impedance ? ImpedanceReading.Report(impedance) : null,
            Sensitivity = SensitivityJson.Read(root),
            Information = root.List("information", FindingReading.Finding),
            Warnings = root.List("warnings", field => new Warning(field.Text("file"), field.Text("place"), field.Text("message"))),
        };
    }

    private static void RequireTrials(RecordingResult result, JsonField root)
    {
        HashSet<int> numbers = [.. result.Trials.Select(trial => trial.Number)];
        if (numbers.Count != result.Trials.Length)
        {
            throw root.Wrong("trials", "a list with each number once");
        }

        if (result.Channels.Any(channel => channel.Cells.Any(cell => !numbers.Contains(cell.Trial))))
        {
            throw root.Wrong("channels", "a list whose cells name trials of this recording");
        }
    }

    private static ImmutableArray<Trial> Trials(JsonField root) => root.List("trials", field => new Trial
    {
        Number = field.Whole("number"),
        Label = field.TextOrNull("label"),
        Role = TrialRoleWords.From(field.Text("role")) ?? throw field.Wrong("role", "scored, rest or task"),
        OnsetS = field.Exact("onset_s"),
        DurationS = field.Exact("duration_s"),
        WindowFromS = field.Exact("window_from_s"),
        WindowToS = field.Exact("window_to_s"),
        BaselineFromS = field.ExactOrNull("baseline_from_s"),
    });
}
