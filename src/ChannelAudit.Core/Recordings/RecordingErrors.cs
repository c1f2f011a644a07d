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

    /// <summary>No channel that is audited has a label that a setup could name.</summary>
    public static ChannelAuditException NoChannelToName(string file) => new(
        FaultKind.Recording,
        $"{file}: no channel has a label that could stand in a setup",
        "each needs a label of its own, in plain text without blanks around it: name the channels where the file is exported");
}
