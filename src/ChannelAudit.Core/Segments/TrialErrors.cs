using ChannelAudit.Setup;

namespace ChannelAudit.Segments;

/// <summary>Every message about trials that cannot be made.</summary>
internal static class TrialErrors
{
    /// <summary>The setup names one source, the command line another.</summary>
    public static ChannelAuditException TwoSources(string? setupFile, TrialSource asked, string eventsFile) =>
        Fault(
            $"{setupFile ?? "setup"}, [trials] from: trials come from \"{asked.ToString().ToLowerInvariant()}\", but --events gives {eventsFile}",
            "leave one of the two out");

    /// <summary>No events table.</summary>
    public static ChannelAuditException NoTable(string recording) =>
        Fault($"{recording}: trials are to come from an events table, and there is none", "give it with --events, or put it beside the recording with the ending _events.tsv");

    /// <summary>No trigger channel.</summary>
    public static ChannelAuditException NoTrigger(string recording) =>
        Fault($"{recording}: trials are to come from a trigger channel, and there is none", "name another source under [trials] in the setup file, or mark the channel TRIG in channels.tsv");

    private static ChannelAuditException Fault(string message, string hint) => new(FaultKind.Usage, message, hint);
}
