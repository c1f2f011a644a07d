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

    /// <summary>A pilot's folder, whose page is about what to do next.</summary>
    public static ChannelAuditException IsPilot(string folder) => new(
        FaultKind.Usage, $"{OneLine.Of(folder)}: a pilot, not an audit", "give the audit that screen makes of the recording, or a new folder");

    /// <summary>An audit of another version, whose pages are not mixed with those of this one.</summary>
    public static ChannelAuditException OtherVersion(string folder, string version) => new(
        FaultKind.Usage,
        $"{OneLine.Of(folder)}: made by version {OneLine.Of(version)}, this is {ProductVersion.Text}",
        "run screen again with this version, or give a new folder");

    /// <summary>A study that is on the disk, and on no page yet.</summary>
    public static ChannelAuditException KeptButNotShown(ChannelAuditException fault) => new(
        fault.Kind, $"report.html does not show the study yet: {fault.Message}", $"{fault.Hint}; screen shows the study where its files were kept", fault);

    /// <summary>An audit that was made with other limits, another setup or other events.</summary>
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
