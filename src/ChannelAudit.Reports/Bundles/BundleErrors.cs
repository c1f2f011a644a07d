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

    /// <summary>The operating system refused to write.</summary>
    public static ChannelAuditException CannotWrite(string file, Exception inner) => new(
        FaultKind.Usage, $"{OneLine.Of(file)}: cannot be written: {OneLine.Of(inner.Message)}", "name a file with --to in a folder that you may write into, with room enough", inner);
}
