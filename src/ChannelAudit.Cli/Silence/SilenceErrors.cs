using ChannelAudit.Text;

namespace ChannelAudit.Cli.Silence;

/// <summary>What can be wrong with a request to <c>detectability</c> beyond the words themselves.</summary>
internal static class SilenceErrors
{
    /// <summary>An audit that is not of this recording.</summary>
    public static ChannelAuditException NotInAudit(string folder, string recording) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}: an audit that does not have {OneLine.Of(recording)}, or has it with other bytes",
        "give the audit of this recording, or a new folder");

    /// <summary>An audit that was made with other limits or another setup.</summary>
    public static ChannelAuditException OtherInputs(string folder, string what) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}: was audited with other {what} than given here, so the study would not hold for it",
        $"give the {what} of that audit, or a new folder");

    /// <summary>A folder with files of somebody else.</summary>
    public static ChannelAuditException NotOurs(string folder, string found) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}: is neither empty, nor an audit, nor an earlier study (it holds {OneLine.Of(found)})",
        "give a new folder with --out");
}
