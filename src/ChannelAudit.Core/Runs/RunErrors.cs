using ChannelAudit.Text;

namespace ChannelAudit.Runs;

/// <summary>Every message about the files of a run: what is read and where results go.</summary>
internal static class RunErrors
{
    /// <summary>There is nothing at a path.</summary>
    public static ChannelAuditException NoSuchPath(string path) => new(
        FaultKind.Usage, $"{OneLine.Of(path)}: there is no such file or folder", "give recordings, or folders that hold recordings");

    /// <summary>A folder without recordings.</summary>
    public static ChannelAuditException NothingFound(IEnumerable<string> paths) => new(
        FaultKind.Usage, $"{OneLine.List(paths)}: no recording in there", $"files looked for: {RecordingFiles.ExtensionsInWords}");

    /// <summary>A folder that cannot be listed.</summary>
    public static ChannelAuditException CannotList(string folder, Exception inner) => new(
        FaultKind.Usage, $"{OneLine.Of(folder)}: cannot be listed", "see that you may read the folder", inner);

    /// <summary>A file that cannot be read.</summary>
    public static ChannelAuditException CannotRead(string path, Exception inner) => new(
        FaultKind.Recording, $"{OneLine.Of(path)}: cannot be read: {OneLine.Of(inner.Message)}", "see that the file is still there and that you may read it", inner);

    /// <summary>Two recordings that would be called the same.</summary>
    public static ChannelAuditException SameId(RecordingEntry first, RecordingEntry second) => new(
        FaultKind.Usage,
        $"{OneLine.Of(second.FilePath)}: would be called '{first.Id}' like {OneLine.Of(first.FilePath)}",
        "give the folder above both, or leave one of the two out");

    /// <summary>The output folder holds something that is not an audit.</summary>
    public static ChannelAuditException NotAnAudit(string folder, string found) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}: not empty and not an audit: '{OneLine.Of(found)}' is in it",
        "give an empty or a new folder with --out");

    /// <summary>A file stands where the output folder should be.</summary>
    public static ChannelAuditException NotAFolder(string folder) => new(
        FaultKind.Usage, $"{OneLine.Of(folder)}: a file, not a folder", "give an empty or a new folder with --out");
}
