using ChannelAudit.Reports.Wording;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Deciding;

/// <summary>Every message about deciding, beyond those about the ledger itself.</summary>
internal static class DecidingErrors
{
    /// <summary>A pilot is repeated, not decided about.</summary>
    public static ChannelAuditException IsPilot(string folder) => Fault(
        $"{OneLine.Of(folder)}: a pilot, not an audit", "decide on the audit that screen makes of the recording; a pilot is simply run again");

    /// <summary>Tables of one version are not mixed with those of another.</summary>
    public static ChannelAuditException OtherVersion(string folder, string version, string ours) => Fault(
        $"{OneLine.Of(folder)}: made by version {OneLine.Of(version)}, this is {ours}",
        "decide with that version, or run screen again with this one: decisions stay, and are held against the new results");

    /// <summary>Several recordings, and none named.</summary>
    public static ChannelAuditException WhichRecording(string folder, IReadOnlyCollection<string> ids) => Fault(
        $"{OneLine.Of(folder)}: of {Quantities.Many(ids.Count, "recording")}, and none is named", $"name one of them: {OneLine.List(ids)}");

    /// <summary>A recording that the audit has not.</summary>
    public static ChannelAuditException NoRecording(string folder, string given, IReadOnlyCollection<string> ids) => Fault(
        $"{OneLine.Of(folder)}: there is no recording '{OneLine.Of(given)}'", Nearest(given, ids));

    /// <summary>A channel that the recording has not.</summary>
    public static ChannelAuditException NoChannel(string recording, string given, IReadOnlyCollection<string> names, string? byLabel) => Fault(
        $"{OneLine.Of(recording)}: there is no channel '{OneLine.Of(given)}'",
        byLabel is null ? Nearest(given, names) : $"the channel with this label is called '{OneLine.Of(byLabel)}' here");

    /// <summary>A trial that the recording has not.</summary>
    public static ChannelAuditException NoTrial(string recording, int given, IReadOnlyCollection<int> numbers) => Fault(
        $"{OneLine.Of(recording)}: there is no trial {given.Plain()}",
        numbers.Count == 0 ? "it has no trials" : $"its trials are {numbers.Min().Plain()} to {numbers.Max().Plain()}");

    /// <summary>The same with the place of the row that it is about.</summary>
    public static ChannelAuditException At(string place, ChannelAuditException fault) => new(fault.Kind, $"{place}: {fault.Message}", fault.Hint, fault);

    /// <summary>Neither channel nor trial.</summary>
    public static ChannelAuditException NoSubject(string recording) => Fault(
        $"{OneLine.Of(recording)}: neither a channel nor a trial is named", "name a channel, a trial, or both for the trial in that channel");

    /// <summary>Files of the audit are not as they were written.</summary>
    public static ChannelAuditException Changed(string folder, string recording) => Fault(
        $"{OneLine.Of(folder)}/recordings/{OneLine.Of(recording)}: files are not as they were written, so tables and pages were left as they are",
        "run screen again on the recordings; every decision is kept and applied then");

    private static ChannelAuditException Fault(string message, string hint) => new(FaultKind.Usage, message, hint);

    private static string Nearest(string given, IReadOnlyCollection<string> known) =>
        NearestName.Of(given, known) is { } nearest ? $"did you mean '{OneLine.Of(nearest)}'?" : known.Count == 0 ? "there is none" : $"known here: {OneLine.List(known)}";
}
