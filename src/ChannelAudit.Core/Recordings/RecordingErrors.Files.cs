using ChannelAudit.Text;

namespace ChannelAudit.Recordings;

/// <content>Files that cannot be opened at all.</content>
internal static partial class RecordingErrors
{
    /// <summary>Nothing is at the path.</summary>
    public static ChannelAuditException Missing(string path) => new(
        FaultKind.Recording,
        $"{path}: there is no such file",
        "check the spelling of the path");

    /// <summary>A folder where one recording is needed.</summary>
    public static ChannelAuditException IsAFolder(string path) => new(
        FaultKind.Recording,
        $"{path}: is a folder, not a recording",
        "give the path of one recording inside it");

    /// <summary>The file has no byte, or would be waited for.</summary>
    public static ChannelAuditException Empty(string file) => new(
        FaultKind.Recording,
        $"{file}: the file is empty",
        "the recording was not saved or not copied: look for the complete file; a pipe or a device cannot be read");

    /// <summary>Zeros stand where the header was.</summary>
    public static ChannelAuditException BeginsWithZeros(string file, long count) => new(
        FaultKind.Recording,
        FormattableString.Invariant($"{file}: not a recording: begins with {count} zero bytes: the header is lost"),
        "copy the file again from where it was recorded, and compare the two");

    /// <summary>The system refuses to open the file.</summary>
    public static ChannelAuditException CannotOpen(string file, Exception cause) => new(
        FaultKind.Recording,
        $"{file}: the file cannot be opened",
        "check that you may read it and that no other program holds it",
        cause);
}
