using ChannelAudit.Setup;
using ChannelAudit.Text;

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

    /// <summary>No channel of the name that the setup gives to the trigger channel.</summary>
    public static ChannelAuditException NoSuchTrigger(string? setupFile, string recording, string label, IReadOnlyList<string> labels) => Fault(
        $"{setupFile ?? "setup"}, [trials] trigger_channel: channel '{OneLine.Of(label)}' is not in {OneLine.Of(recording)}, or holds nothing",
        NearestName.Of(label, labels) is { } nearest ? $"did you mean '{OneLine.Of(nearest)}'? labels there: {OneLine.List(labels)}" : $"labels there: {OneLine.List(labels)}");

    /// <summary>A mask or codes on values that are no whole numbers.</summary>
    public static ChannelAuditException NotWholeNumbers(string recording, string label) => Fault(
        $"{OneLine.Of(recording)}, channel '{OneLine.Of(label)}': trigger_mask is given, but the channel does not hold whole numbers",
        "take trigger_mask out: an analogue pulse is read at its middle; or name the channel that holds the codes");

    /// <summary>Trials upon trials at the same moments.</summary>
    /// <param name="file">Where they are stated.</param>
    /// <param name="trials">How many.</param>
    /// <param name="times">Their length together, in lengths of the recording.</param>
    public static ChannelAuditException Heap(string file, int trials, double times) => Fault(
        FormattableString.Invariant($"{OneLine.Of(file)}: {trials:#,0} trials overlap: together they are {times:#,0} times as long as the recording"),
        "check that onsets, durations and the scoring window are in seconds, and that the events are trials, not samples");

    private static ChannelAuditException Fault(string message, string hint) => new(FaultKind.Usage, message, hint);
}
