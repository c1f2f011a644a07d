using ChannelAudit.Text;

namespace ChannelAudit.Runs;

/// <summary>Every message about the files of a run: what is read and where results go.</summary>
internal static class RunErrors
{
    /// <summary>There is nothing at a path.</summary>
    public static ChannelAuditException NoSuchPath(string path) => new(
        FaultKind.Usage, $"{OneLine.Of(path)}: there is no such file or folder", "give recordings, or folders that hold recordings");

    /// <summary>A folder without recordings.</summary>
    public static ChannelAuditException NothingFound(IEnumerable<string> paths, IReadOnlyList<string> passedOver) => new(
        FaultKind.Usage,
        $"{OneLine.List(paths)}: no recording in there" + (passedOver.Count == 0 ? string.Empty : $"; without lines of numbers: {OneLine.List(passedOver)}"),
        passedOver.Count == 0 ? $"files looked for: {RecordingFiles.ExtensionsInWords}; in a BIDS data set *_emg.edf and *_emg.bdf" : "name a file by itself to have it audited all the same");

    /// <summary>A pattern that nothing fits.</summary>
    public static ChannelAuditException NothingMatches(string pattern) => new(
        FaultKind.Usage, $"{OneLine.Of(pattern)}: no file fits", "* is any text within a name, ** any text, ? one character; quotes keep the shell from it");

    /// <summary>A list without a path.</summary>
    public static ChannelAuditException EmptyList(string list) => new(
        FaultKind.Usage, $"{OneLine.Of(list)}: names no recording", "write one path a line, relative to the list's own folder");

    /// <summary>A list that cannot be read.</summary>
    public static ChannelAuditException CannotReadList(string list, Exception inner) => new(
        FaultKind.Usage, $"{OneLine.Of(list)}: cannot be read: {OneLine.Of(inner.Message)}", "see that the file is there and that you may read it", inner);

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
