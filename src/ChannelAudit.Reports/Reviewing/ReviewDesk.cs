using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>Takes decisions of a review: through the ledger's own code, and only when nobody has decided about the same since it was shown.</summary>
/// <param name="book">The cells.</param>
/// <param name="clock">Says when.</param>
public sealed class ReviewDesk(ReviewBook book, TimeProvider clock)
{
    private const string TakenBack = "taken back on the review page";

    /// <summary>Decides about a cell, its channel, or it and those alike: when it returns, every line is on the disk.</summary>
    /// <param name="request">What is decided.</param>
    /// <param name="cancel">Ends the wait for another writer.</param>
    /// <returns>The lines; that about the cell is the first.</returns>
    /// <exception cref="ChannelAuditException">
    /// When nothing can be decided here, there is no such cell, a text is none, the number of those alike is another one, or the ledger cannot be added to; nothing is
    /// written then.
    /// </exception>
    /// <exception cref="DecisionConflictException">When somebody was quicker; nothing is written then.</exception>
    public ImmutableArray<Decision> Decide(ReviewRequest request, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(request);
        string by = RequireDecider();
        book.Follow();
        Decision[] drafts = [.. Cells(request).Select(number => Draft(request, number, by))];
        ImmutableArray<Decision> lines = LedgerWriter.Append(
            book.Options.Folder,
            book.Ledger,
            ledger => drafts.Select(draft => Between(ledger, draft, request.Seen)).FirstOrDefault(other => other is not null) is { } other
                ? throw Conflict(ledger, other)
                : [drafts[0], .. drafts.Skip(1).Select(draft => draft with { Origin = ReviewOrigin.AsIn(ledger.Lines.Length + 1).ToString() })],
            clock,
            cancel);
        book.Follow();
        return lines;
    }

    /// <summary>Takes this person's last step on the page back: a decision, or all that were made at once.</summary>
    /// <param name="number">The number of its last decision, so that no other one is meant.</param>
    /// <param name="cancel">Ends the wait for another writer.</param>
    /// <returns>The decisions that were taken back, each by a line of its own.</returns>
    /// <exception cref="ChannelAuditException">When it is not, or the ledger cannot be added to; nothing is written then.</exception>
    public ImmutableArray<Decision> Withdraw(int number, CancellationToken cancel)
    {
        string by = RequireDecider();
        ImmutableArray<Decision> step = [];
        LedgerWriter.Append(
            book.Options.Folder,
            book.Ledger,
            ledger =>
            {
                step = book.Own.LastIn(ledger) is { } last && last.Number == number ? book.Own.StepOf(ledger, last) : throw ReviewErrors.NotYours(number);
                return [.. step.Select(one => new Decision
                {
                    By = by, Action = DecisionAction.Withdraw, Reason = TakenBack, Withdraws = one.Number, Origin = book.Origin.ToString(),
                })];
            },
            clock,
            cancel);
        book.Follow();
        return step;
    }

    private string RequireDecider() => book.Options is { IsReadOnly: false, By: { } by } ? by : throw ReviewErrors.IsReadOnly();

    // Checked against what the person was told: a number that has changed since shall be looked at again.
    private int[] Cells(ReviewRequest request)
    {
        if (request.Number < 1 || request.Number > book.Cells.Length)
        {
            throw ReviewErrors.NoCell(request.Number, book.Cells.Length);
        }

        if (book.Options.IsBlind && request.Reach != ReviewReach.Trial)
        {
            throw ReviewErrors.BlindReach();
        }

        ImmutableArray<int> others = request.Reach == ReviewReach.Alike ? AlikeCells.To(book, request.Number) : [];
        return others.Length == request.Others ? [request.Number, .. others] : throw ReviewErrors.OtherCount(others.Length);
    }

    private Decision Draft(ReviewRequest request, int number, string by)
    {
        ReviewCell place = book.Cells[number - 1];
        RecordingResult recording = book.BareOf(place.Recording);
        ChannelResult channel = recording.Channels[place.Channel];
        CellResult cell = channel.Cells[place.Cell];
        Trial trial = ReviewBook.TrialOf(recording, cell);
        bool isWhole = request.Reach == ReviewReach.Channel;
        return new Decision
        {
            By = by,
            Action = DecisionAction.Decide,
            Recording = recording.Id,
            Channel = channel.Name,
            Trial = isWhole ? null : new DecidedTrial(trial.Number, trial.OnsetS, trial.DurationS, trial.Label),
            Verdict = request.Verdict,
            Reason = request.Reason,
            Computed = [isWhole ? new ComputedVerdict(channel.Name, channel.Verdict, channel.Reasons) : new ComputedVerdict(channel.Name, cell.Verdict, cell.Reasons)],
            RecordingSha256 = recording.Sha256,
            CriteriaSha256 = book.Audit.Criteria.Sha256,
            Origin = book.Origin.ToString(),
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
