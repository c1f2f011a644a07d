using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Results;

namespace ChannelAudit.Studies;

/// <summary>Rate, unit and stated filters, as the headers have them.</summary>
internal static class OddHeaders
{
    /// <summary>Recordings whose headers say something else than most.</summary>
    public static IEnumerable<StudyFinding> In(ImmutableArray<StudyRecording> all, ImmutableArray<string> usual) =>
    [
        .. Ask(all, usual, OddKind.Rate, channel => $"{Number(channel.RateHz)} Hz",
            "Bring all recordings to one rate before comparing, or leave these out; see how they came to differ."),
        .. Ask(
            all, usual, OddKind.Unit, Unit,
            "Give the unit: export these again with it, or state it in the setup of a run of their own."),
        .. Ask(
            all, usual, OddKind.FilterStated, channel => channel.Signal is { } signal ? Filter(signal) : null,
            "Look at the amplifier's settings of that day; filter all recordings to one band before comparing."),
    ];

    private static IEnumerable<StudyFinding> Ask(
        ImmutableArray<StudyRecording> all, ImmutableArray<string> usual, string kind, Func<StudyChannel, string?> value, string toDo)
    {
        (string Recording, string[] Values)[] ofRecordings =
            [.. all.Select(recording => (recording.Id, recording.Channels.Select(value).OfType<string>().Distinct(StringComparer.Ordinal).ToArray()))];

        // What all channels of each recording share is said once and not by channel.
        return ofRecordings.All(one => one.Values.Length <= 1)
            ? Vote.Of(kind, null, ofRecordings.Where(one => one.Values.Length == 1).Select(one => (one.Recording, one.Values[0])), toDo)
            : usual.SelectMany(name => Vote.Of(
                kind,
                name,
                all.Select(recording => (recording.Id, Value: recording.Find(name) is { } channel ? value(channel) : null))
                    .Where(one => one.Value is not null)
                    .Select(one => (one.Id, one.Value!)),
                toDo));
    }

    private static string? Unit(StudyChannel channel) =>
        channel.Signal is not { } signal ? null : string.Equals(signal.Unit, "uV", StringComparison.Ordinal) ? "microvolts" : "raw codes";

    private static string Filter(ChannelSignal signal)
    {
        string[] parts =
        [
            .. new[]
            {
                signal.HighpassHz is { } high ? high > 0 ? $"high-pass {Number(high)} Hz" : "DC" : null,
                signal.LowpassHz is { } low ? $"low-pass {Number(low)} Hz" : null,
                signal.NotchesHz.IsEmpty ? null : $"notch {string.Join(", ", signal.NotchesHz.Select(Number))} Hz",
            }.OfType<string>(),
        ];
        return parts.Length == 0 ? "none stated" : string.Join(", ", parts);
    }

    private static string Number(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
