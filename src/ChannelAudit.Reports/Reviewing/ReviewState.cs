using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>Where a review stands.</summary>
public sealed record ReviewState
{
    /// <summary>Cells in the list.</summary>
    public required int Count { get; init; }

    /// <summary>What is left to look at, in words: <c>12 questionable, 3 reject, and 2 channels as a whole</c>.</summary>
    public required string Left { get; init; }

    /// <summary>How many trials and channels that are.</summary>
    public required int LeftCount { get; init; }

    /// <summary>What is done, in words: <c>3 of 117 decided</c>.</summary>
    public required string Progress { get; init; }

    /// <summary>What to know when nothing is left; empty before.</summary>
    public required string Done { get; init; }

    /// <summary>The first undecided cell; null when nothing is left.</summary>
    public int? First { get; init; }

    /// <summary>Whether the review is blind.</summary>
    public required bool IsBlind { get; init; }

    /// <summary>Whether nothing can be decided.</summary>
    public required bool IsReadOnly { get; init; }

    /// <summary>Who decides, or null.</summary>
    public string? By { get; init; }

    /// <summary>This person's last step that can be taken back; null when there is none.</summary>
    public UndoView? Undo { get; init; }

    /// <summary>This person's earlier reasons, the latest first.</summary>
    public ImmutableArray<string> Reasons { get; init; } = [];

    /// <summary>Lines of the ledger.</summary>
    public required int Seen { get; init; }

    /// <summary>Where a review stands now.</summary>
    /// <param name="book">The cells.</param>
    public static ReviewState Of(ReviewBook book)
    {
        ArgumentNullException.ThrowIfNull(book);
        Ledger ledger = book.Ledger;
        ReviewTally tally = ReviewTally.Of(book);
        return new ReviewState
        {
            Count = book.Cells.Length,
            Left = tally.Left,
            LeftCount = tally.Trials + tally.Channels,
            Progress = tally.Progress,
            Done = tally.Done,
            First = book.NextAfter(0),
            IsBlind = book.Options.IsBlind,
            IsReadOnly = book.Options.IsReadOnly || book.Options.By is null,
            By = book.Options.By,
            Undo = !book.Options.IsReadOnly && book.Own.LastIn(ledger) is { } last ? UndoOf(book, ledger, last) : null,
            Reasons = book.Own.ReasonsIn(ledger),
            Seen = ledger.Lines.Length,
        };
    }

    private static UndoView UndoOf(ReviewBook book, Ledger ledger, Decision last)
    {
        ImmutableArray<Decision> step = book.Own.StepOf(ledger, last);
        int cell = book.NumberOf(step[0]);
        string verdict = last.Verdict is { } grade ? VerdictWords.Code(grade) : string.Empty;
        string what = book.Options.IsBlind ? $"cell {cell.Plain()}"
            : step[0].Trial is { } trial ? $"{step[0].Channel}, trial {trial.Number.Plain()}" : $"{step[0].Channel} as a whole";
        string more = step.Length == 1 ? string.Empty : $" and {(step.Length - 1).Plain()} more";
        string where = book.Options.IsBlind ? string.Empty : $" ({step[0].Recording})";
        return new UndoView(last.Number, cell, $"{what}{more}: {verdict}{where}", last.Number <= book.LinesAtStart);
    }
}
