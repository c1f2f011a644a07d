using System.Globalization;

namespace ChannelAudit.Reports.Output;

/// <summary>Every message about the output folder and the files in it.</summary>
internal static class OutputErrors
{
    /// <summary>A file of an audit is not JSON.</summary>
    public static ChannelAuditException NotJson(string file, long line, Exception inner) => new(
        FaultKind.Usage,
        string.Create(CultureInfo.InvariantCulture, $"{file}, line {line}: not JSON"),
        "run the audit again, or restore the file from a copy",
        inner);

    /// <summary>A file of an audit has another layout.</summary>
    public static ChannelAuditException OtherLayout(string file, string found, string expected) => new(
        FaultKind.Usage,
        $"{file}, format: '{found}' instead of '{expected}'",
        "it was made by another version or by hand: run the audit again with this version");

    /// <summary>A value is missing or of another kind.</summary>
    public static ChannelAuditException WrongValue(string file, string place, string expected) => new(
        FaultKind.Usage,
        $"{file}, {place}: not {expected}",
        "the file was changed by hand: run the audit again, or restore it from a copy");

    /// <summary>The folder holds something that is not an audit.</summary>
    public static ChannelAuditException NotAnAudit(string folder, string found) => new(
        FaultKind.Usage,
        $"{folder}: not empty and not an audit: '{found}' is in it",
        "give an empty or a new folder with --out");

    /// <summary>A file stands where the folder should be.</summary>
    public static ChannelAuditException NotAFolder(string folder) => new(
        FaultKind.Usage,
        $"{folder}: a file, not a folder",
        "give an empty or a new folder with --out");

    /// <summary>The hidden folder of a run leads elsewhere.</summary>
    public static ChannelAuditException LinkedFolder(string folder, string name) => new(
        FaultKind.Usage,
        $"{folder}/{name}: a link to another place",
        "take the link away, or give another folder with --out");

    /// <summary>Another run writes to the folder.</summary>
    public static ChannelAuditException AnotherRun(string folder) => new(
        FaultKind.Usage,
        $"{folder}: another run is writing there",
        "wait for its end, or give another folder with --out");

    /// <summary>The list of what a run that died has left to do is damaged.</summary>
    public static ChannelAuditException DamagedJournal(string folder, string file) => new(
        FaultKind.Usage,
        $"{folder}/{file}: not as it was written",
        "the folder holds files of two runs: run the audit again into a new folder, and take decisions.jsonl over by hand");

    /// <summary>Files of two runs stand side by side.</summary>
    public static ChannelAuditException HalfDone(string folder) => new(
        FaultKind.Usage,
        $"{folder}: a run was ended while it put its files in place, or is doing so now",
        "run the same command again where it may write to the folder: it is completed then");

    /// <summary>The operating system refused to write.</summary>
    public static ChannelAuditException CannotWrite(string file, Exception inner) => new(
        FaultKind.Usage,
        $"{file}: cannot be written: {inner.Message}",
        "check free space and permissions of the output folder, close programs that hold the file open, and run again",
        inner);

    /// <summary>The operating system refused to read the folder.</summary>
    public static ChannelAuditException CannotRead(string file, Exception inner) => new(
        FaultKind.Usage,
        $"{file}: cannot be read: {inner.Message}",
        "check the permissions of the output folder",
        inner);
}
