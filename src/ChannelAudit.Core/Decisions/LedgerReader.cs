using System.Collections.Immutable;
using ChannelAudit.Text;

namespace ChannelAudit.Decisions;

/// <summary>Reads a ledger and follows its chain.</summary>
internal static class LedgerReader
{
    private const byte LineEnd = (byte)'\n';

    /// <summary>The ledger's name for messages.</summary>
    public static string NameIn(string folder) => $"{OneLine.Of(folder)}/{Ledger.FileName}";

    /// <summary>Reads the ledger of a folder.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="known">What was read of it before.</param>
    /// <exception cref="ChannelAuditException">When it cannot be read or its chain is broken.</exception>
    public static Ledger Read(string folder, Ledger known)
    {
        string path = Path.Combine(folder, Ledger.FileName);
        string name = NameIn(folder);
        try
        {
            return File.Exists(path) || Directory.Exists(path) ? Of(Bytes(path), name, known) : Ledger.Empty;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw LedgerErrors.CannotRead(name, fault);
        }
    }

    /// <summary>Verifies the bytes of a ledger.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="name">Its name for messages.</param>
    /// <param name="known">What was verified before: where the bytes begin with its lines, the rest alone is looked at.</param>
    public static Ledger Of(ReadOnlyMemory<byte> bytes, string name, Ledger known)
    {
        bool goesOn = !known.LacksLineEnd && bytes.Span.StartsWith(known.Whole.Span);
        List<Decision> lines = goesOn ? [.. known.Lines] : [];
        int start = goesOn ? known.Whole.Length : 0;
        for (int length = bytes.Span[start..].IndexOf(LineEnd); length >= 0; length = bytes.Span[start..].IndexOf(LineEnd))
        {
            (Decision? decision, string fault) = Next(bytes.Slice(start, length), lines);
            lines.Add(decision ?? throw LedgerErrors.WrongLine(name, lines.Count + 1, WithWhatFollows(fault, lines, bytes[(start + length + 1)..])));
            start += length + 1;
        }

        // Only the line end is missing: the decision is there, and telling it torn would lose it.
        ReadOnlyMemory<byte> rest = bytes[start..];
        if (!rest.IsEmpty && Next(rest, lines).Decision is { } last)
        {
            lines.Add(last);
            return new Ledger([.. lines], bytes, lacksLineEnd: true);
        }

        return new Ledger([.. lines], bytes[..start], rest.Length);
    }

    private static (Decision? Decision, string Fault) Next(ReadOnlyMemory<byte> line, List<Decision> before)
    {
        if (line.IsEmpty)
        {
            return (null, "an empty line");
        }

        if (LedgerChain.StatedHash(line.Span) is not { } stated)
        {
            return (null, "not a line of this ledger: it does not end with its SHA-256");
        }

        string hash = LedgerChain.HashOf(LedgerChain.BodyOf(line.Span));
        if (!string.Equals(hash, stated, StringComparison.Ordinal))
        {
            return (null, "changed since it was written: its SHA-256 does not fit");
        }

        (Decision? decision, string fault) = DecisionJson.Read(line);
        return decision is null ? (null, fault) : PlaceFault(decision, before) is { } place ? (null, place) : (decision, string.Empty);
    }

    private static string? PlaceFault(Decision decision, List<Decision> before)
    {
        int expected = before.Count + 1;
        if (decision.Number < expected)
        {
            return decision.Number < 1 ? FormattableString.Invariant($"numbered {decision.Number}; numbers begin at 1")
                : string.Equals(before[decision.Number - 1].Sha256, decision.Sha256, StringComparison.Ordinal)
                ? FormattableString.Invariant($"line {decision.Number} stands here again")
                : FormattableString.Invariant($"numbered {decision.Number}, like an earlier line");
        }

        if (decision.Number > expected)
        {
            return FormattableString.Invariant($"numbered {decision.Number}, but decision {expected} belongs here: ");
        }

        if (!string.Equals(decision.Previous, before.Count == 0 ? LedgerChain.Start : before[^1].Sha256, StringComparison.Ordinal))
        {
            return "does not continue the line before it: one of the two is from another ledger";
        }

        bool isWithdrawal = decision.Action == DecisionAction.Withdraw;
        bool isWhole = isWithdrawal
            ? decision.Withdraws is >= 1 && decision.Withdraws < expected && before[decision.Withdraws.Value - 1].Action == DecisionAction.Decide
            : decision is { Recording: not null, Verdict: not null, RecordingSha256: not null } && (decision.Channel is not null || decision.Trial is not null);
        return isWhole ? null : isWithdrawal ? "withdraws what is no decision before it" : "a decision without its recording, subject or verdict";
    }

    // Cut out or moved: only the lines behind can tell.
    private static string WithWhatFollows(string fault, List<Decision> before, ReadOnlyMemory<byte> rest)
    {
        if (!fault.EndsWith(": ", StringComparison.Ordinal))
        {
            return fault;
        }

        for (int start = 0; start < rest.Length;)
        {
            int end = rest.Span[start..].IndexOf(LineEnd);
            ReadOnlyMemory<byte> line = end < 0 ? rest[start..] : rest.Slice(start, end);
            if (LedgerChain.StatedHash(line.Span) is not null && DecisionJson.Read(line).Decision?.Number == before.Count + 1)
            {
                return fault + "lines were moved";
            }

            start += line.Length + 1;
        }

        return fault + "lines were cut out";
    }

    private static byte[] Bytes(string path)
    {
        if (PlainFile.IsEmpty(path))
        {
            return [];
        }

        // A writer may be at work beside us.
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
        byte[] bytes = new byte[stream.Length];
        int read = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return bytes[..read];
    }
}
