using System.Text.Json;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Methods;

/// <summary><c>methods-paragraph.json</c>: every number of the methods paragraph; described by <c>docs/schemas/methods.schema.json</c>.</summary>
public static class MethodsJson
{
    /// <summary>The name of the file.</summary>
    public const string FileName = "methods-paragraph.json";

    /// <summary>Names the layout of the file.</summary>
    public const string Format = "channelaudit-methods/1";

    /// <summary>The file as UTF-8 bytes.</summary>
    public static byte[] Render(MethodsTally tally, MethodsOrigin origin)
    {
        ArgumentNullException.ThrowIfNull(tally);
        ArgumentNullException.ThrowIfNull(origin);
        using JsonText text = new();
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteString("format", Format);
        WriteOrigin(text, origin);
        WriteData(text, tally);
        WriteVerdicts(json, "channels", tally.Channels);
        WriteVerdicts(json, "trials", tally.Trials);
        WriteDecided(json, tally);
        WriteShare(json, "too_few_trials", tally.TooFewTrials);
        text.Rows("by_channel", tally.ByChannel, (row, entry) => WriteRow(row, "channel", entry.Key, entry.Value));
        text.Rows("by_condition", tally.ByCondition, (row, entry) => WriteRow(row, "condition", entry.Key.Length == 0 ? null : entry.Key, entry.Value));
        text.Rows("by_reason", tally.ByReason, (row, entry) => WriteReason(row, entry.Reason, entry.Tally, tally));
        if (tally.Fairness is { } fairness)
        {
            FairnessJson.Write(text, fairness);
        }

        json.WriteStartObject("not_assessed");
        WriteShare(json, "trials", new Share(tally.TrialsWithGaps, tally.Trials.Total));
        WriteShare(json, "channels", new Share(tally.ChannelsWithGaps, tally.Channels.Total));
        json.WriteEndObject();
        json.WriteEndObject();
        return text.ToArray();
    }

    private static void WriteDecided(Utf8JsonWriter json, MethodsTally tally)
    {
        if (tally.DecidedChannels.Total + tally.DecidedTrials.Total + tally.StaleDecisions == 0)
        {
            return;
        }

        json.WriteStartObject("decided");
        foreach ((string name, DecisionTally decided) in new[] { ("channels", tally.DecidedChannels), ("trials", tally.DecidedTrials) })
        {
            json.WriteStartObject(name);
            json.WriteNumber("worse", decided.Worse);
            json.WriteNumber("better", decided.Better);
            json.WriteNumber("same", decided.Same);
            json.WriteEndObject();
        }

        json.WriteNumber("stale", tally.StaleDecisions);
        json.WriteEndObject();
    }

    private static void WriteOrigin(JsonText text, MethodsOrigin origin)
    {
        Utf8JsonWriter json = text.Writer;
        json.WriteString("version", origin.Version);
        json.WriteStartObject("criteria");
        json.WriteString("file", origin.Criteria.FileName);
        json.WriteString("sha256", origin.Criteria.Sha256);
        FreezeJson.Write(json, origin.Criteria);
        text.Rows("limits", origin.Criteria.All, CriterionJson.Write);
        json.WriteEndObject();
        WriteInput(json, "setup", origin.Setup);
        WriteInput(json, "impedance", origin.Impedance);
        json.WriteNumber("interval", 0.95);
    }

    private static void WriteInput(Utf8JsonWriter json, string name, StoredInput input)
    {
        json.WriteStartObject(name);
        json.WriteString("file", input.FileName);
        json.WriteString("sha256", input.Sha256);
        json.WriteEndObject();
    }

    private static void WriteData(JsonText text, MethodsTally tally)
    {
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject("data");
        json.WriteNumber("recordings", tally.Recordings.Count);
        json.WriteNumber("unread", tally.Unread);
        json.WriteNumber("duration_s", tally.Recordings.Sum);
        json.WriteNumber("shortest_s", tally.Recordings.Least);
        json.WriteNumber("longest_s", tally.Recordings.Most);
        json.WriteNumber("channels_not_audited", tally.SkippedChannels);
        json.WriteNumber("scored_trials", tally.ScoredTrials.Count);
        json.WriteNumber("shortest_window_s", tally.ScoredTrials.Least);
        json.WriteNumber("longest_window_s", tally.ScoredTrials.Most);
        json.WriteNumber("rest_trials", tally.RestTrials);
        json.WriteNumber("task_trials", tally.TaskTrials);
        WriteCounts(text, "formats", "format", tally.Formats, "recordings");
        WriteCounts(text, "trials_from", "source", tally.TrialSources, "recordings");
        WriteCounts(text, "scoring", "filter", tally.ScoringFilters, "recordings");
        WriteNumbers(text, "mains", "hz", tally.Mains, "recordings");
        json.WriteNumber("mains_unseen", tally.MainsUnseen);
        json.WriteNumber("odd_recordings", tally.OddRecordings);
        text.Rows("odd", tally.OddByKind, (row, entry) =>
        {
            row.WriteStartObject();
            row.WriteString("kind", entry.Kind);
            row.WriteNumber("recordings", entry.Recordings);
            row.WriteEndObject();
        });
        WriteNumbers(text, "rates", "hz", tally.Rates, "channels");
        text.Rows("minimum_trials", tally.Minimums, (row, entry) =>
        {
            row.WriteStartObject();
            row.WriteNumber("trials", entry.Key);
            row.WriteNumber("recordings", entry.Value);
            row.WriteEndObject();
        });
        text.Rows("bands", tally.Bands, (row, entry) =>
        {
            row.WriteStartObject();
            row.WriteNumber("from_hz", entry.Key.FromHz);
            row.WriteNumber("to_hz", entry.Key.ToHz);
            row.WriteNumber("channels", entry.Value);
            row.WriteEndObject();
        });
        json.WriteEndObject();
    }

    private static void WriteCounts(JsonText text, string name, string what, SortedDictionary<string, int> counts, string things) =>
        text.Rows(name, counts, (row, entry) =>
        {
            row.WriteStartObject();
            row.WriteString(what, entry.Key.Length == 0 ? null : entry.Key);
            row.WriteNumber(things, entry.Value);
            row.WriteEndObject();
        });

    private static void WriteNumbers(JsonText text, string name, string what, SortedDictionary<double, int> counts, string things) =>
        text.Rows(name, counts, (row, entry) =>
        {
            row.WriteStartObject();
            row.WriteNumber(what, entry.Key);
            row.WriteNumber(things, entry.Value);
            row.WriteEndObject();
        });

    private static void WriteVerdicts(Utf8JsonWriter json, string name, VerdictTally tally)
    {
        json.WriteStartObject(name);
        WriteShares(json, tally);
        json.WriteEndObject();
    }

    private static void WriteRow(Utf8JsonWriter json, string name, string? value, VerdictTally tally)
    {
        json.WriteStartObject();
        json.WriteString(name, value);
        WriteShares(json, tally);
        json.WriteEndObject();
    }

    private static void WriteShares(Utf8JsonWriter json, VerdictTally tally)
    {
        WriteShare(json, "pass", tally.Of(Grade.Pass));
        WriteShare(json, "questionable", tally.Of(Grade.Questionable));
        WriteShare(json, "reject", tally.Of(Grade.Reject));
    }

    private static void WriteReason(Utf8JsonWriter json, string reason, ReasonTally own, MethodsTally tally)
    {
        json.WriteStartObject();
        json.WriteString("reason", reason);
        WriteShare(json, "trials_rejected", new Share(own.Trials(Grade.Reject), tally.Trials.Total));
        WriteShare(json, "trials_questionable", new Share(own.Trials(Grade.Questionable), tally.Trials.Total));
        WriteShare(json, "trials_not_assessed", new Share(own.TrialsNotAssessed, tally.Trials.Total));
        WriteShare(json, "channels_rejected", new Share(own.Channels(Grade.Reject), tally.Channels.Total));
        WriteShare(json, "channels_questionable", new Share(own.Channels(Grade.Questionable), tally.Channels.Total));
        WriteShare(json, "channels_not_assessed", new Share(own.ChannelsNotAssessed, tally.Channels.Total));
        json.WriteEndObject();
    }

    /// <summary>Writes a share.</summary>
    internal static void WriteShare(Utf8JsonWriter json, string name, Share share)
    {
        json.WriteStartObject(name);
        json.WriteNumber("count", share.Count);
        json.WriteNumber("of", share.Total);
        json.WriteNumberOrNull("share", share.Value);
        json.WriteNumberOrNull("low", share.Interval?.Low);
        json.WriteNumberOrNull("high", share.Interval?.High);
        json.WriteEndObject();
    }
}
