using ChannelAudit.Text;

namespace ChannelAudit.Reports.Bids;

/// <summary>Every message about an export to BIDS.</summary>
internal static class BidsErrors
{
    /// <summary>A raw data set, or a place inside one that is not for derivatives.</summary>
    public static ChannelAuditException RawDataSet(string folder, string dataSet) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}: in the raw data set {OneLine.Of(dataSet)}, which is never written into",
        "give a folder of its own, or one below derivatives/ of that data set: --to DATASET/derivatives/channelaudit");

    /// <summary>A folder with other content.</summary>
    public static ChannelAuditException NotOurs(string folder) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}: {(File.Exists(folder) ? "a file, not a folder" : "not empty and not an earlier export")}",
        "give a new or an empty folder with --to");

    /// <summary>A file that cannot be read while the place is looked at.</summary>
    public static ChannelAuditException CannotRead(string file, Exception cause) => new(
        FaultKind.Usage,
        $"{OneLine.Of(file)}: cannot be read",
        "check the permissions of the folder, or give another one with --to",
        cause);

    /// <summary>An id that leaves no label.</summary>
    public static ChannelAuditException NoLabel(string id) => new(
        FaultKind.Usage,
        $"{OneLine.Of(id)}: has no ASCII letter or digit of which a BIDS label could be made",
        "rename the recording, for example sub-01_task-NAME_emg.edf, and audit it again");

    /// <summary>Two recordings that come to the same name.</summary>
    public static ChannelAuditException SameName(string one, string other, string name) => new(
        FaultKind.Usage,
        $"{OneLine.Of(one)} and {OneLine.Of(other)}: both would be {OneLine.Of(name)} in BIDS",
        "give the recordings BIDS names that differ (sub-01_task-NAME_run-1_emg.edf), or audit and export them apart");
}
