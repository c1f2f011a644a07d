using ChannelAudit.Text;

namespace ChannelAudit.Reports.Bundles;

/// <summary>Every message about a bundle.</summary>
public static class BundleErrors
{
    /// <summary>No zip archive.</summary>
    public static ChannelAuditException NotZip(string file, Exception inner) => new(
        FaultKind.Usage, $"{OneLine.Of(file)}: no zip archive, or a damaged one: {OneLine.Of(inner.Message)}", "ask for the file again, or export it again", inner);

    /// <summary>Something in it that no bundle of ours has.</summary>
    public static ChannelAuditException Refused(string file, string entry, string found) => new(
        FaultKind.Usage, $"{OneLine.Of(file)}, {OneLine.Of(entry)}: {found}", "no bundle of channelaudit is like that: do not unpack it by other means either");

    /// <summary>A zip archive without an index.</summary>
    public static ChannelAuditException NoIndex(string file) => new(
        FaultKind.Usage, $"{OneLine.Of(file)}: no bundle: there is no {BundleIndex.FileName} in it", "give a file that export bundle wrote");

    /// <summary>An index of another layout.</summary>
    public static ChannelAuditException OtherLayout(string file) => new(
        FaultKind.Usage, $"{file}, format: not '{BundleIndex.Format}'", "it was made by another version or by hand: export it again with this version");

    /// <summary>A recording that is not the one that was audited.</summary>
    public static ChannelAuditException NotAsAudited(string what) => new(
        FaultKind.Recording, what, "a bundle is made from the recordings that were audited; channelaudit verify DIR --data ROOT says what differs");

    /// <summary>An audit whose tables do not know its last decisions.</summary>
    public static ChannelAuditException Behind(string folder) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}: decisions were added since its tables and pages were made",
        "channelaudit decide DIR brings them up to date; then export again");

    /// <summary>A file of the audit that is not the one it lists.</summary>
    public static ChannelAuditException NotAsListed(string folder, string file) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}/{OneLine.Of(file)}: not with the bytes that audit.json lists",
        "if somebody decides on it just now export again after that; else channelaudit verify DIR says what differs");

    /// <summary>More than a bundle holds.</summary>
    public static ChannelAuditException TooMuch(string file, string entry) => new(
        FaultKind.Usage,
        $"{OneLine.Of(file)}: more than a bundle holds, at {OneLine.Of(entry)}",
        "screen the recordings in several runs, and export each by itself");

    /// <summary>Values that contradict each other in a way that no bundle of ours does.</summary>
    public static ChannelAuditException Contradicts(string file, Exception inner) => new(
        FaultKind.Usage,
        $"{OneLine.Of(file)}: holds values that contradict each other ({inner.GetType().Name})",
        "no bundle of channelaudit is like that; if it comes from export bundle report what --verbose prints",
        inner);

    /// <summary>A file that does not fit beside the others.</summary>
    public static ChannelAuditException CannotUnpack(string file, string entry, Exception inner) => new(
        FaultKind.Usage,
        $"{OneLine.Of(file)}, {OneLine.Of(entry)}: cannot be unpacked beside the others: {OneLine.Of(inner.Message)}",
        "two of its names may be one on this system: verify it where capitals tell files apart; or set TMPDIR to a folder with room",
        inner);

    /// <summary>The operating system refused to write.</summary>
    public static ChannelAuditException CannotWrite(string file, Exception inner) => new(
        FaultKind.Usage, $"{OneLine.Of(file)}: cannot be written: {OneLine.Of(inner.Message)}", "name a file with --to in a folder that you may write into, with room enough", inner);
}
