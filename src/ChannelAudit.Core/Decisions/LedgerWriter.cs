using System.Collections.Immutable;

namespace ChannelAudit.Decisions;

/// <summary>Adds lines to a ledger: the only code that writes one.</summary>
/// <remarks>
/// One writer at a time, by a lock that the operating system holds and gives up with its process: a lock file that was left behind locks nobody out. A line is
/// acknowledged when it and its line end are on the disk; a process that dies before leaves a torn tail at most, which the next writer moves aside.
/// </remarks>
public static class LedgerWriter
{
    private const int LockTries = 500;
    private const int LockWaitMs = 20;

    /// <summary>Adds lines, all in one write.</summary>
    /// <param name="folder">The folder of an audit.</param>
    /// <param name="make">Makes drafts from the ledger as it stands, while no other writer can add to it; it refuses by throwing.</param>
    /// <param name="clock">Says when.</param>
    /// <param name="cancel">Ends the wait for another writer; a write that has begun is finished.</param>
    /// <returns>The lines as they were written.</returns>
    /// <exception cref="ChannelAuditException">When the ledger is broken, a text is none, another writer does not end, or the operating system refuses; nothing is added then.</exception>
    public static ImmutableArray<Decision> Append(string folder, Func<Ledger, IReadOnlyList<Decision>> make, TimeProvider clock, CancellationToken cancel) =>
        Append(folder, Ledger.Empty, make, clock, cancel);

    /// <summary>Adds lines to a ledger that was read before, all in one write.</summary>
    /// <param name="folder">The folder of an audit.</param>
    /// <param name="known">What was read of it: what has not changed by a byte is not verified twice.</param>
    /// <param name="make">Makes drafts from the ledger as it stands.</param>
    /// <param name="clock">Says when.</param>
    /// <param name="cancel">Ends the wait for another writer.</param>
    /// <returns>The lines as they were written.</returns>
    /// <exception cref="ChannelAuditException">As for the other one.</exception>
    public static ImmutableArray<Decision> Append(
        string folder, Ledger known, Func<Ledger, IReadOnlyList<Decision>> make, TimeProvider clock, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(known);
        ArgumentNullException.ThrowIfNull(make);
        ArgumentNullException.ThrowIfNull(clock);
        string name = LedgerReader.NameIn(folder);
        string path = Path.Combine(folder, Ledger.FileName);
        if (new FileInfo(path).LinkTarget is not null)
        {
            throw LedgerErrors.IsLink(name);
        }

        using FileStream held = Lock(folder, name, cancel);
        Ledger ledger = known.ReadAgain(folder);
        ImmutableArray<Decision> lines = Chained(ledger, make(ledger), clock.GetUtcNow());
        try
        {
            KeepTornAside(folder, path, ledger);
            Write(path, ledger, lines);
            return lines;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            // What has no places to write to is a pipe.
            throw LedgerErrors.CannotWrite(name, fault);
        }
    }

    /// <summary>Takes a decision back.</summary>
    /// <param name="folder">The folder of an audit.</param>
    /// <param name="number">The decision's number.</param>
    /// <param name="by">Who does.</param>
    /// <param name="reason">Why.</param>
    /// <param name="origin">With what.</param>
    /// <param name="clock">Says when.</param>
    /// <param name="cancel">Ends the wait for another writer.</param>
    /// <exception cref="ChannelAuditException">As for <see cref="Append(string, Func{Ledger, IReadOnlyList{Decision}}, TimeProvider, CancellationToken)"/>, and when there is no such decision or it was taken back before.</exception>
    public static Decision Withdraw(string folder, int number, string by, string reason, string origin, TimeProvider clock, CancellationToken cancel)
    {
        string name = LedgerReader.NameIn(folder);
        return Append(
            folder,
            ledger =>
            {
                if (number < 1 || number > ledger.Lines.Length)
                {
                    throw LedgerErrors.NoSuchDecision(name, number, ledger.Lines.Length);
                }

                if (ledger.Lines[number - 1].Action == DecisionAction.Withdraw)
                {
                    throw LedgerErrors.IsWithdrawal(name, number);
                }

                return ledger.WithdrawnBy(number) is { } before
                    ? throw LedgerErrors.WithdrawnBefore(name, number, before)
                    : [new Decision { By = by, Action = DecisionAction.Withdraw, Reason = reason, Withdraws = number, Origin = origin }];
            },
            clock,
            cancel)[0];
    }

    private static FileStream Lock(string folder, string name, CancellationToken cancel)
    {
        string path = Path.Combine(folder, Ledger.LockName);
        for (int left = LockTries; ; left--)
        {
            try
            {
                // Never removed: a writer that waits would hold the lock of a file that is gone, beside one that holds the new file's.
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 0);
            }
            catch (IOException) when (left > 1 && File.Exists(path))
            {
                cancel.WaitHandle.WaitOne(LockWaitMs);
                cancel.ThrowIfCancellationRequested();
            }
            catch (IOException) when (File.Exists(path))
            {
                throw LedgerErrors.Busy(name);
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                throw LedgerErrors.CannotWrite(name, fault);
            }
        }
    }

    private static ImmutableArray<Decision> Chained(Ledger ledger, IReadOnlyList<Decision> drafts, DateTimeOffset now)
    {
        ImmutableArray<Decision>.Builder lines = ImmutableArray.CreateBuilder<Decision>(drafts.Count);
        LedgerMark mark = ledger.Mark;
        DateTimeOffset second = new(now.UtcTicks - (now.UtcTicks % TimeSpan.TicksPerSecond), TimeSpan.Zero);
        foreach (Decision draft in drafts)
        {
            Decision line = draft with
            {
                Number = mark.Lines + 1,
                Previous = mark.Head,
                At = second,
                By = DecisionText.Checked("the name", draft.By, DecisionText.LongestName),
                Reason = DecisionText.Checked("the reason", draft.Reason, DecisionText.LongestReason),
            };
            line = line with { Sha256 = LedgerChain.StatedHash(DecisionJson.Render(line))! };
            lines.Add(line);
            mark = new LedgerMark(line.Number, line.Sha256);
        }

        return lines.ToImmutable();
    }

    // First the copy, then the cut: a crash between the two leaves the bytes twice, never nowhere.
    private static void KeepTornAside(string folder, string path, Ledger ledger)
    {
        if (ledger.TornBytes == 0)
        {
            return;
        }

        using FileStream stream = new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite, bufferSize: 0);
        byte[] torn = new byte[ledger.TornBytes + 1];
        stream.Position = ledger.Whole.Length;
        stream.ReadExactly(torn, 0, ledger.TornBytes);
        torn[^1] = (byte)'\n';
        using (FileStream aside = new(Path.Combine(folder, Ledger.TornName), FileMode.Append, FileAccess.Write, FileShare.Read, bufferSize: 0))
        {
            aside.Write(torn);
            aside.Flush(flushToDisk: true);
        }

        stream.SetLength(ledger.Whole.Length);
        stream.Flush(flushToDisk: true);
    }

    private static void Write(string path, Ledger ledger, ImmutableArray<Decision> lines)
    {
        byte[] bytes = [.. ledger.LacksLineEnd ? "\n"u8 : default, .. lines.SelectMany(line => DecisionJson.Render(line).Append((byte)'\n'))];
        using FileStream stream = new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.ReadWrite, bufferSize: 0);
        try
        {
            stream.Position = ledger.Whole.Length;
            stream.Write(bytes);
            stream.Flush(flushToDisk: true);
        }
        catch (IOException)
        {
            // A full disk: what was not acknowledged shall not look as if it were.
            stream.SetLength(ledger.Whole.Length);
            throw;
        }
    }
}
