using System.Collections.Immutable;
using ChannelAudit.Recordings;

namespace ChannelAudit.Decisions;

/// <summary>The decisions of an audit, <c>decisions.jsonl</c>, verified line by line.</summary>
public sealed class Ledger
{
    /// <summary>The name of the ledger in the folder of an audit.</summary>
    public const string FileName = "decisions.jsonl";

    /// <summary>Where the rest of a line is kept that was broken off while it was written.</summary>
    public const string TornName = "decisions.torn";

    /// <summary>The file whose lock lets one writer in at a time; it holds nothing and stays.</summary>
    public const string LockName = ".decisions.lock";

    private readonly ILookup<string, Decision> _byRecording;
    private readonly Dictionary<int, int> _withdrawnBy = [];

    /// <summary>Takes over lines that were verified.</summary>
    internal Ledger(ImmutableArray<Decision> lines, ReadOnlyMemory<byte> whole = default, int tornBytes = 0, bool lacksLineEnd = false)
    {
        (Lines, Whole, TornBytes, LacksLineEnd) = (lines, whole, tornBytes, lacksLineEnd);
        _byRecording = lines.Where(line => line.Action == DecisionAction.Decide).ToLookup(line => line.Recording!, StringComparer.Ordinal);
        foreach (Decision line in lines.Where(line => line.Withdraws is not null))
        {
            _withdrawnBy.TryAdd(line.Withdraws!.Value, line.Number);
        }
    }

    /// <summary>A ledger without lines.</summary>
    public static Ledger Empty { get; } = new([]);

    /// <summary>Every line, decisions and withdrawals, in order.</summary>
    public ImmutableArray<Decision> Lines { get; }

    /// <summary>Bytes of a last line that was broken off while it was written; it was never acknowledged and counts for nothing.</summary>
    public int TornBytes { get; }

    /// <summary>How far it has grown.</summary>
    public LedgerMark Mark => new(Lines.Length, Lines.IsEmpty ? LedgerChain.Start : Lines[^1].Sha256);

    /// <summary>What to tell of a line that was broken off; null when there is none.</summary>
    public Warning? Torn => TornBytes == 0 ? null : new Warning(
        FileName,
        FormattableString.Invariant($"line {Lines.Length + 1}"),
        FormattableString.Invariant($"{TornBytes} bytes of a decision that was broken off while it was written, never acknowledged; left out, and kept in {TornName} at the next decision"));

    /// <summary>The whole lines as they stand in the file.</summary>
    internal ReadOnlyMemory<byte> Whole { get; }

    /// <summary>Whether the last line is whole but for its line end.</summary>
    internal bool LacksLineEnd { get; }

    /// <summary>Whether a file of an audit's folder is the ledger or belongs to it: never taken away, and nothing foreign.</summary>
    /// <param name="path">Its path below the folder.</param>
    public static bool IsFileOfIts(string path) => path is FileName or TornName or LockName;

    /// <summary>Reads and verifies the ledger of a folder.</summary>
    /// <param name="folder">The folder of an audit; without a ledger in it the result is empty.</param>
    /// <exception cref="ChannelAuditException">When a line was changed, cut out, doubled, moved or is none; file and line are named.</exception>
    public static Ledger Read(string folder) => LedgerReader.Read(folder, Empty);

    /// <summary>Reads the ledger of a folder again; of what has not changed by a byte nothing is verified twice.</summary>
    /// <param name="folder">The folder that this one was read from.</param>
    /// <exception cref="ChannelAuditException">As for <see cref="Read"/>.</exception>
    public Ledger ReadAgain(string folder) => LedgerReader.Read(folder, this);

    /// <summary>The decisions about a recording in their order, withdrawn ones too.</summary>
    public IEnumerable<Decision> About(string recording) => _byRecording[recording];

    /// <summary>Ids of all recordings that decisions are about, in order.</summary>
    public ImmutableArray<string> Recordings => [.. _byRecording.Select(group => group.Key).Order(StringComparer.Ordinal)];

    /// <summary>The number of the line that took a decision back; null when none did.</summary>
    public int? WithdrawnBy(int number) => _withdrawnBy.TryGetValue(number, out int by) ? by : null;

    /// <summary>Refuses a ledger that is not the continuation of what outputs were made from.</summary>
    /// <param name="mark">How far it had grown then.</param>
    /// <param name="folder">For the message.</param>
    /// <exception cref="ChannelAuditException">When it is shorter, or another one.</exception>
    public void RequireContinues(LedgerMark mark, string folder)
    {
        ArgumentNullException.ThrowIfNull(mark);
        if (Lines.Length < mark.Lines || (mark.Lines > 0 && !string.Equals(Lines[mark.Lines - 1].Sha256, mark.Head, StringComparison.Ordinal)))
        {
            throw LedgerErrors.Cut(LedgerReader.NameIn(folder), Lines.Length, mark);
        }
    }
}
