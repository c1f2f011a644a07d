using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Shares;

/// <summary>Every message about shares of a run.</summary>
internal static class ShareErrors
{
    /// <summary>The folder holds something else.</summary>
    public static ChannelAuditException Taken(string folder, string found) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}: neither empty nor a share: '{OneLine.Of(found)}' is in it",
        "give each share an empty or new folder of its own with --out");

    /// <summary>Another share stands in the folder.</summary>
    public static ChannelAuditException OtherShare(string folder, RecordingShare found, RecordingShare asked) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}: share {found} stands there, {asked} was asked for",
        "give each share a folder of its own with --out");

    /// <summary>A folder holds no share.</summary>
    public static ChannelAuditException NotAShare(string place) => new(
        FaultKind.Usage,
        $"{OneLine.Of(place)}: not a finished share",
        "give folders that screen --shard wrote to its end; if it was broken off, run it again: it goes on where it was");

    /// <summary>Two shares are not of one run.</summary>
    public static ChannelAuditException NotOneRun(string first, string second, string difference) => new(
        FaultKind.Usage,
        $"{OneLine.Of(second)} and {OneLine.Of(first)} are not shares of one run: {difference}",
        "run the share that is out of date again, with the files and the version of the others");

    /// <summary>A share is given twice.</summary>
    public static ChannelAuditException Twice(string first, string second, RecordingShare share) => new(
        FaultKind.Usage,
        $"{OneLine.Of(first)} and {OneLine.Of(second)}: both are share {share}",
        "give each share once");

    /// <summary>Shares are missing.</summary>
    public static ChannelAuditException Missing(string numbers, int of) => new(
        FaultKind.Usage,
        FormattableString.Invariant($"of {of} shares these are missing: {numbers}"),
        "run them (screen --shard), and give the folders of all");

    /// <summary>A share does not hold what it says.</summary>
    public static ChannelAuditException Damaged(string folder, string what) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}: {OneLine.Of(what)} is not as the share was written",
        "run that share again: what is whole is taken over");

    /// <summary>The operating system refuses.</summary>
    public static ChannelAuditException CannotRead(string place, Exception inner) => new(
        FaultKind.Usage,
        $"{OneLine.Of(place)}: cannot be read: {OneLine.Of(inner.Message)}",
        "see that the folder of the share is there and that you may read it",
        inner);
}
