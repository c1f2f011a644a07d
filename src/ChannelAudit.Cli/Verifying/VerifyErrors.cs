using ChannelAudit.Text;

namespace ChannelAudit.Cli.Verifying;

/// <summary>Every message about an audit that is to be checked.</summary>
internal static class VerifyErrors
{
    /// <summary>The temporary folder is in the audit or the data.</summary>
    public static ChannelAuditException ScratchInside(string folder) => new(
        FaultKind.Usage, $"{OneLine.Of(folder)}: the system's temporary folder lies in it, and nothing is written there", "set TMPDIR to a folder elsewhere");

    /// <summary>The temporary folder cannot be written.</summary>
    public static ChannelAuditException NoScratch(Exception inner) => new(
        FaultKind.Usage, $"the system's temporary folder cannot be written: {OneLine.Of(inner.Message)}", "set TMPDIR to a folder that you may write into", inner);

    /// <summary>The data are not there.</summary>
    public static ChannelAuditException NoData(string root) => new(
        FaultKind.Usage, $"--data: there is no folder {OneLine.Of(root)}", "give the folder that screen was given, or leave --data out: then only the audit itself is checked");
}
