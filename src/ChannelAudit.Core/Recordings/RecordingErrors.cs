namespace ChannelAudit.Recordings;

/// <summary>Every message about a recording that cannot be read.</summary>
internal static partial class RecordingErrors
{
    /// <summary>The file is none of the formats we read.</summary>
    public static ChannelAuditException NotARecording(string file, string found) => new(
        FaultKind.Recording,
        $"{file}: not a recording: {found}",
        "give an EDF, EDF+ or BDF file, or delimited text with one column a channel");
}
