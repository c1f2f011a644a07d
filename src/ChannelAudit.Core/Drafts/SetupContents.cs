using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Measures;
using ChannelAudit.Setup;
using ChannelAudit.Text;

namespace ChannelAudit.Drafts;

/// <summary>What a setup says beside its sites, in a line each: the filter of scoring, whose recordings they are, what differs in some of them, the protocol.</summary>
public static class SetupContents
{
    /// <summary>The lines; empty when it says nothing of the kind.</summary>
    /// <param name="setup">The setup.</param>
    public static ImmutableArray<string> Of(StudySetup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        List<string> lines = [];
        if (setup.Scoring.HasFilter)
        {
            lines.Add($"scoring: {ScoringFilter.Of(setup.Scoring).InWords}");
        }

        if (setup.ParticipantPath is { } path)
        {
            lines.Add($"participants: from paths like '{OneLine.Of(path.Text)}'");
        }

        lines.AddRange(setup.Overrides.Select(one => $"recordings {Patterns(one)}: {Differs(one)}"));
        if (setup.Protocol is { } protocol)
        {
            lines.Add($"protocol: {Expected(protocol)}");
        }

        return [.. lines];
    }

    /// <summary><c>'P07_day1', 'P09_*'</c>.</summary>
    /// <param name="one">What is different for some recordings.</param>
    public static string Patterns(RecordingOverride one)
    {
        ArgumentNullException.ThrowIfNull(one);
        return string.Join(", ", one.Match.Select(pattern => $"'{OneLine.Of(pattern.Text)}'"));
    }

    private static string Differs(RecordingOverride one)
    {
        RecordingSetup recording = one.Recording;
        (string Key, string? Value)[] values =
        [
            ("participant", one.Participant), ("group", one.Group), ("mains_hz", recording.MainsHz?.ToString(CultureInfo.InvariantCulture)),
            ("sampling_hz", recording.SamplingHz?.ToString(CultureInfo.InvariantCulture)), ("unit", recording.Unit),
            ("amplifier_noise_uv", recording.AmplifierNoiseUv?.ToString(CultureInfo.InvariantCulture)), ("amplifier", recording.Amplifier),
            ("technician", recording.Technician), ("date", recording.Date),
        ];
        return string.Join(", ",
        [
            .. one.Channels.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => $"{pair.Key} is channel '{OneLine.Of(pair.Value)}'"),
            .. values.Where(value => value.Value is not null).Select(value => $"{value.Key} {OneLine.Of(value.Value!)}"),
        ]);
    }

    private static string Expected(ProtocolSetup protocol)
    {
        string trials = string.Join(", ", protocol.Trials.Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Count} of '{OneLine.Of(one.Label)}'")));
        List<string> parts = trials.Length == 0 ? [] : [trials];
        if (!protocol.Sequence.IsEmpty)
        {
            parts.Add("in a stated order");
        }

        if (protocol.DurationS is not null || !protocol.DurationsS.IsEmpty)
        {
            parts.Add("durations checked");
        }

        if (protocol.GapS is not null)
        {
            parts.Add("distances checked");
        }

        return parts.Count == 0 ? "nothing is expected" : string.Join("; ", parts);
    }
}
