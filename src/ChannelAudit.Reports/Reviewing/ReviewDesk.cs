using ChannelAudit.Decisions;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>Takes decisions of a review: through the ledger's own code, and only when nobody has decided about the same since it was shown.</summary>
/// <param name="book">The cells.</param>
/// <param name="clock">Says when.</param>
public sealed class ReviewDesk(ReviewBook book, TimeProvider clock)
{
    private const string TakenBack = "taken back on the review page";

    /// <summary>Decides about a cell: when it returns, the decision is on the disk.</summary>
    /// <param name="number">The number of the cell, from 1.</param>
    /// <param name="verdict">The verdict.</param>
    /// <param name="reason">Why.</param>
    /// <param name="seen">Lines of the ledger when the cell was shown.</param>
    /// <param name="cancel">Ends the wait for another writer.</param>
    /// <exception cref="ChannelAuditException">
    /// When nothing can be decided here, there is no such cell, a text is none, or the ledger cannot be added to; nothing is written then.
    /// </exception>
    /// <exception cref="DecisionConflictException">When somebody was quicker; nothing is written then.</exception>
    public Decision Decide(int number, Grade verdict, string reason, int seen, CancellationToken cancel)
    {
        string by = RequireDecider();
        Decision draft = Draft(number, by, verdict, reason);
        Decision line = LedgerWriter.Append(
            book.Options.Folder,
            ledger => Between(ledger, draft, seen) is { } other ? throw Conflict(ledger, other) : [draft],
            clock,
            cancel)[0];
        book.Follow();
        return line;
    }

    /// <summary>Takes this person's last decision on the page back.</summary>
    /// <param name="number">Its number, so that no other one is meant.</param>
    /// <param name="cancel">Ends the wait for another writer.</param>
    /// <exception cref="ChannelAuditException">When it is not, or the ledger cannot be added to; nothing is written then.</exception>
    public Decision Withdraw(int number, CancellationToken cancel)
    {
        string by = RequireDecider();
        book.Follow();
        if (book.Own.LastIn(book.Ledger)?.Number != number)
        {
            throw ReviewErrors.NotYours(number);
        }

        Decision line = LedgerWriter.Withdraw(book.Options.Folder, number, by, TakenBack, OwnDecisions.OriginOf(book.Seed), clock, cancel);
        book.Follow();
        return line;
    }

    private string RequireDecider() => book.Options is { IsReadOnly: false, By: { } by } ? by : throw ReviewErrors.IsReadOnly();

    private Decision Draft(int number, string by, Grade verdict, string reason)
    {
        if (number < 1 || number > book.Cells.Length)
        {
            throw ReviewErrors.NoCell(number, book.Cells.Length);
        }

        ReviewCell place = book.Cells[number - 1];
        RecordingResult recording = book.BareOf(place.Recording);
        ChannelResult channel = recording.Channels[place.Channel];
        CellResult cell = channel.Cells[place.Cell];
        Trial trial = ReviewBook.TrialOf(recording, cell);
        return new Decision
        {
            By = by,
            Action = DecisionAction.Decide,
            Recording = recording.Id,
            Channel = channel.Name,
            Trial = new DecidedTrial(trial.Number, trial.OnsetS, trial.DurationS, trial.Label),
            Verdict = verdict,
            Reason = reason,
            Computed = [new ComputedVerdict(channel.Name, cell.Verdict, cell.Reasons)],
            RecordingSha256 = recording.Sha256,
            CriteriaSha256 = book.Audit.Criteria.Sha256,
            Origin = OwnDecisions.OriginOf(book.Seed),
            Blind = book.Options.IsBlind,
        };
    }

    // The latest line since the cell was shown that is about it, its whole trial or its whole channel. A blind person hears of the own ones only.
    private Decision? Between(Ledger ledger, Decision draft, int seen) => ledger.Lines.Skip(seen).LastOrDefault(line =>
    {
        Decision subject = line.Withdraws is { } number ? ledger.Lines[number - 1] : line;
        return Meets(subject, draft) && (!book.Options.IsBlind || book.Own.Holds(subject));
    });

    private static bool Meets(Decision one, Decision draft) => string.Equals(one.Recording, draft.Recording, StringComparison.Ordinal)
        && (one.Channel is null || string.Equals(one.Channel, draft.Channel, StringComparison.Ordinal))
        && (one.Trial is null || one.Trial.Number == draft.Trial?.Number);

    private static DecisionConflictException Conflict(Ledger ledger, Decision other) =>
        new(other, other.Withdraws is { } number ? ledger.Lines[number - 1] : null, ledger.Lines.Length);
}
