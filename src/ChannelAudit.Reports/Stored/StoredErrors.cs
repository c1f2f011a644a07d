using ChannelAudit.Text;

namespace ChannelAudit.Reports.Stored;

/// <summary>Every message about an audit that is read back, beyond those about its single values.</summary>
internal static class StoredErrors
{
    /// <summary>A folder without an audit, or no folder at all.</summary>
    public static ChannelAuditException NoAudit(string folder) => new(
        FaultKind.Usage,
        Directory.Exists(folder)
            ? $"{OneLine.Of(folder)}: not an audit: there is no audit.json of channelaudit in it"
            : File.Exists(folder) ? $"{OneLine.Of(folder)}: a file, not the folder of an audit" : $"{OneLine.Of(folder)}: there is no such folder",
        "give the folder that screen wrote with --out");

    /// <summary>A result that is listed and not there.</summary>
    public static ChannelAuditException NoResult(string file) => new(
        FaultKind.Usage,
        $"{file}: listed in audit.json, but not there",
        "run the audit again, or restore the file from a copy");

    /// <summary>A result that another run has written.</summary>
    public static ChannelAuditException OfAnotherAudit(string file) => new(
        FaultKind.Usage,
        $"{file}: belongs to another audit than audit.json beside it",
        "two runs were mixed in one folder: run the audit again");
}
