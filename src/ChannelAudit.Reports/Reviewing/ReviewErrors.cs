using ChannelAudit.Reports.Wording;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>Every message about a review, beyond those about the audit and its ledger.</summary>
internal static class ReviewErrors
{
    /// <summary>A blind review without recordings: what else can be shown carries verdicts.</summary>
    public static ChannelAuditException BlindNeedsData() => Fault(
        "a blind review needs --data: the pictures inside an audit show its verdicts", "give --data ROOT, the folder that screen was given");

    /// <summary>No folder of recordings.</summary>
    public static ChannelAuditException NoData(string folder) => Fault(
        File.Exists(folder) ? $"--data: {OneLine.Of(folder)} is a file, not a folder" : $"--data: there is no folder {OneLine.Of(folder)}",
        "give the folder that screen was given, below which the recordings lie as they did then");

    /// <summary>A folder without any of the recordings.</summary>
    public static ChannelAuditException NoneFound(string folder, int count) => Fault(
        $"--data: below {OneLine.Of(folder)} lies none of the {Quantities.Many(count, "recording")} of the audit",
        "give the folder that screen was given, below which the recordings lie as they did then");

    /// <summary>Nobody can judge blind what they know.</summary>
    public static ChannelAuditException AllSeen(string by, int count) => Fault(
        $"nothing is left to judge blind: {OneLine.Of(by)} has decided {Quantities.Many(count, "cell")} with everything in view, and there are no others",
        "let somebody else judge blind, or give --cells all");

    /// <summary>Nothing to decide about.</summary>
    public static ChannelAuditException NoCells(string folder) => Fault(
        $"{OneLine.Of(folder)}: no recording has a trial to look at", "a review goes through channels and trials: screen recordings that have some");

    /// <summary>Deciding where it was switched off.</summary>
    public static ChannelAuditException IsReadOnly() => Fault("this review is read-only: nothing was decided", "start it again without --read-only, and with --by NAME");

    /// <summary>A number beyond the list.</summary>
    public static ChannelAuditException NoCell(int number, int count) => Fault(
        FormattableString.Invariant($"there is no cell {number}: nothing was decided"), FormattableString.Invariant($"they are numbered from 1 to {count}"));

    /// <summary>Something else than what was audited.</summary>
    public static ChannelAuditException OtherBytes() => Fault(
        "the recording below --data is not the one that was audited (another SHA-256): nothing was decided", "give the folder with the audited recordings, or run screen again");

    /// <summary>No signal was seen.</summary>
    public static ChannelAuditException NotThere() => Fault(
        "the recording of this cell is not below --data, or cannot be read: nothing was decided", "give the folder that screen was given with --data");

    /// <summary>Neither a signal nor a picture was seen.</summary>
    public static ChannelAuditException NothingShown() => Fault(
        "nothing of this trial is shown: nothing was decided", "start the review with --data ROOT, the folder that screen was given");

    /// <summary>A blind person decides about what they see.</summary>
    public static ChannelAuditException BlindReach() => Fault("a blind review decides one trial at a time: nothing was decided", "decide about this trial");

    /// <summary>Another number of trials than the person was told.</summary>
    public static ChannelAuditException OtherCount(int now) => Fault(
        $"this would be for {now.Plain()} other trials now: nothing was decided", "see that you mean it, and decide again");

    /// <summary>A decision of somebody else, or one that was taken back.</summary>
    public static ChannelAuditException NotYours(int number) => Fault(
        $"decision {number.Plain()} is not your last one on this page: nothing was taken back", "look at the page again: somebody may have decided since");

    private static ChannelAuditException Fault(string message, string hint) => new(FaultKind.Usage, message, hint);
}
