namespace ChannelAudit.Recordings;

/// <summary>Every message about a recording that cannot be read, whatever its format.</summary>
internal static partial class RecordingErrors
{
    /// <summary>Every channel is one that is not audited.</summary>
    public static ChannelAuditException NoChannelLeft(Recording recording) => new(
        FaultKind.Recording,
        $"{recording.FileName}: no channel left to audit"
        + (recording.Channels.IsEmpty
            ? ": the file holds no signal"
            : ": " + string.Join("; ", recording.Channels.Take(4).Select(channel => $"{channel.Label}: {channel.NotAudited ?? "not among the setup's sites or without samples"}"))),
        "give a recording with at least one calibrated voltage channel, or name the unit in the setup ([recording] unit)");

    /// <summary>Days from the first to the last sample, and hardly any samples.</summary>
    /// <param name="file">The file's name.</param>
    /// <param name="durationS">From the first sample to the end of the last one, in s.</param>
    /// <param name="samples">Samples of the audited channel that has most.</param>
    public static ChannelAuditException MostlyPause(string file, double durationS, long samples) => new(
        FaultKind.Recording,
        FormattableString.Invariant($"{file}: {durationS / 3600:#,0} hours from the first to the last sample, but only {samples:#,0} samples in any channel that could be audited"),
        "a time is wrong, or parts of other days follow: correct the times, or give each part as a recording of its own");

    /// <summary>No channel that is audited has a label that a setup could name.</summary>
    public static ChannelAuditException NoChannelToName(string file) => new(
        FaultKind.Recording,
        $"{file}: no channel has a label that could stand in a setup",
        "each needs a label of its own, in plain text without blanks around it: name the channels where the file is exported");
}
