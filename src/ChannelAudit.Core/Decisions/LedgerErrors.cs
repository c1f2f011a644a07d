using ChannelAudit.Text;

namespace ChannelAudit.Decisions;

/// <summary>Every message about the ledger of decisions.</summary>
internal static class LedgerErrors
{
    private const string Restore = "decisions are only ever added, by channelaudit: restore the file from a copy";

    /// <summary>A line is not as a line must be.</summary>
    public static ChannelAuditException WrongLine(string file, int line, string found) => new(
        FaultKind.Usage, FormattableString.Invariant($"{file}, line {line}: {found}"), Restore);

    /// <summary>The end of the ledger is gone, or it is another ledger.</summary>
    public static ChannelAuditException Cut(string file, int lines, LedgerMark mark) => new(
        FaultKind.Usage,
        lines < mark.Lines
            ? FormattableString.Invariant($"{file}: {lines} lines, but audit.json was written from {mark.Lines}: its end was cut off, or it is gone")
            : FormattableString.Invariant($"{file}, line {mark.Lines}: another decision than the one that audit.json was written from"),
        Restore + "; to start without decisions, screen into another folder");

    /// <summary>It cannot be read.</summary>
    public static ChannelAuditException CannotRead(string file, Exception inner) => new(
        FaultKind.Usage, $"{file}: cannot be read: {OneLine.Of(inner.Message)}", "see that you may read it, and that it is a file", inner);

    /// <summary>It cannot be written.</summary>
    public static ChannelAuditException CannotWrite(string file, Exception inner) => new(
        FaultKind.Usage, $"{file}: cannot be written, nothing was decided: {OneLine.Of(inner.Message)}", "check free space and permissions of the folder, and decide again", inner);

    /// <summary>Another program holds the lock.</summary>
    public static ChannelAuditException Busy(string file) => new(
        FaultKind.Usage, $"{file}: another program is writing decisions, nothing was decided", "decide again when it has ended");

    /// <summary>The ledger leads elsewhere.</summary>
    public static ChannelAuditException IsLink(string file) => new(
        FaultKind.Usage, $"{file}: a link to another place", "put the file itself into the folder of the audit");

    /// <summary>No text where one is needed.</summary>
    public static ChannelAuditException EmptyText(string what) => new(
        FaultKind.Usage, $"{what} is empty", "write it in words: who reads it later cannot ask");

    /// <summary>A text without end.</summary>
    public static ChannelAuditException LongText(string what, int length, int most) => new(
        FaultKind.Usage, FormattableString.Invariant($"{what} has {length} characters, {most} are allowed"), "say it shorter, or name a document that says more");

    /// <summary>A text that does something.</summary>
    public static ChannelAuditException ControlCharacter(string what, int code, int place) => new(
        FaultKind.Usage, FormattableString.Invariant($"{what} holds U+{code:X4} as character {place}, which is no text"), "write it in one line, without control characters");

    /// <summary>A number that no line has.</summary>
    public static ChannelAuditException NoSuchDecision(string file, int number, int lines) => new(
        FaultKind.Usage,
        FormattableString.Invariant($"{file}: there is no decision {number}"),
        lines == 0 ? "nothing has been decided here yet" : FormattableString.Invariant($"they are numbered from 1 to {lines}"));

    /// <summary>A withdrawal cannot be taken back.</summary>
    public static ChannelAuditException IsWithdrawal(string file, int number) => new(
        FaultKind.Usage, FormattableString.Invariant($"{file}: {number} is a withdrawal itself"), "decide anew instead of taking it back");

    /// <summary>It was taken back before.</summary>
    public static ChannelAuditException WithdrawnBefore(string file, int number, int by) => new(
        FaultKind.Usage, FormattableString.Invariant($"{file}: decision {number} was withdrawn already, by {by}"), "nothing is left to take back");
}
