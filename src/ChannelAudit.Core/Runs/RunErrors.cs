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
        FaultKind.Recording,
        $"{OneLine.Of(Path.GetFileName(path))}: cannot be read: {(inner is UnauthorizedAccessException ? "the operating system refuses" : inner is FileNotFoundException or DirectoryNotFoundException ? "it is not there any more" : "reading failed")}",
        "see that the file is still there and that you may read it",
        inner);

    /// <summary>A file that somebody writes to.</summary>
    public static ChannelAuditException ChangedMeanwhile(string path) => new(
        FaultKind.Recording,
        $"{OneLine.Of(Path.GetFileName(path))}: the file was changed while it was read",
        "make sure that nothing writes to it, then run again; a recording that still goes on is for pilot --follow");

    /// <summary>A file that somebody takes away.</summary>
    public static ChannelAuditException RemovedMeanwhile(string path) => new(
        FaultKind.Recording,
        $"{OneLine.Of(Path.GetFileName(path))}: the file was removed while it was read",
        "put it back, then run again");

    /// <summary>Two recordings that would be called the same.</summary>
    public static ChannelAuditException SameId(RecordingEntry first, RecordingEntry second) => new(
        FaultKind.Usage,
        $"{OneLine.Of(second.FilePath)}: would be called '{first.Id}' like {OneLine.Of(first.FilePath)}",
        string.Equals(Path.GetDirectoryName(first.FilePath), Path.GetDirectoryName(second.FilePath), StringComparison.Ordinal)
            ? "rename one of the two, or leave it out"
            : "give the folder above both, or leave one of the two out");

    /// <summary>A path whose id is too long for the name of a folder.</summary>
    public static ChannelAuditException LongId(RecordingEntry entry, int bytes, int most) => new(
        FaultKind.Usage,
        FormattableString.Invariant($"{OneLine.Of(entry.FilePath)}: its id in outputs would take {bytes} bytes, {most} at most"),
        "give a folder nearer to it, or shorten names: every blank and sign takes three bytes or more");

    /// <summary>The output folder holds something that is not an audit.</summary>
    public static ChannelAuditException NotAnAudit(string folder, string found) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}: not empty and not an audit: '{OneLine.Of(found)}' is in it",
        "give an empty or a new folder with --out");

    /// <summary>A file stands where the output folder should be.</summary>
    public static ChannelAuditException NotAFolder(string folder) => new(
        FaultKind.Usage, $"{OneLine.Of(folder)}: a file, not a folder", "give an empty or a new folder with --out");
}
