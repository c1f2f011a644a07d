using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>Where a review stands.</summary>
public sealed record ReviewState
{
    /// <summary>Cells in the list.</summary>
    public required int Count { get; init; }

    /// <summary>Cells of the scope that are not decided, in words: <c>12 questionable, 3 reject</c>.</summary>
    public required string Left { get; init; }

    /// <summary>How many that are.</summary>
    public required int LeftCount { get; init; }

    /// <summary>The first undecided cell; null when nothing is left.</summary>
    public int? First { get; init; }

    /// <summary>Whether the review is blind.</summary>
    public required bool IsBlind { get; init; }

    /// <summary>Whether nothing can be decided.</summary>
    public required bool IsReadOnly { get; init; }

    /// <summary>Who decides, or null.</summary>
    public string? By { get; init; }

    /// <summary>This person's last decision that can be taken back; 0 when there is none.</summary>
    public int Undo { get; init; }

    /// <summary>The same in words.</summary>
    public string UndoWords { get; init; } = string.Empty;

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
        int questionable = book.Left(Grade.Questionable);
        int reject = book.Left(Grade.Reject);
        int pass = book.Left(Grade.Pass);
        Decision? last = book.Options.IsReadOnly ? null : book.Own.LastIn(ledger);
        return new ReviewState
        {
            Count = book.Cells.Length,
            LeftCount = questionable + reject + pass,
            Left = book.Options.IsBlind ? Quantities.Many(questionable + reject + pass, "cell") : InWords(questionable, reject, pass),
            First = book.NextAfter(0),
            IsBlind = book.Options.IsBlind,
            IsReadOnly = book.Options.IsReadOnly || book.Options.By is null,
            By = book.Options.By,
            Undo = last?.Number ?? 0,
            UndoWords = last is null ? string.Empty : Words(book, last),
            Reasons = book.Own.ReasonsIn(ledger),
            Seen = ledger.Lines.Length,
        };
    }

    private static string InWords(int questionable, int reject, int pass)
    {
        (int Count, string Word)[] all = [(questionable, "questionable"), (reject, "reject"), (pass, "pass")];
        string[] parts = [.. all.Where(one => one.Count > 0).Select(one => $"{one.Count.Plain()} {one.Word}")];
        return parts.Length == 0 ? "none" : string.Join(", ", parts);
    }

    private static string Words(ReviewBook book, Decision line)
    {
        string verdict = line.Verdict is { } grade ? VerdictWords.Code(grade) : string.Empty;
        if (!book.Options.IsBlind)
        {
            return $"{line.Recording}, {line.Channel}, trial {line.Trial?.Number.Plain()}: {verdict}";
        }

        return $"cell {NumberOf(book, line).Plain()}: {verdict}";
    }

    private static int NumberOf(ReviewBook book, Decision line)
    {
        for (int number = 1; number <= book.Cells.Length; number++)
        {
            ReviewCell place = book.Cells[number - 1];
            RecordingResult result = book.BareOf(place.Recording);
            ChannelResult channel = result.Channels[place.Channel];
            if (string.Equals(result.Id, line.Recording, StringComparison.Ordinal)
                && string.Equals(channel.Name, line.Channel, StringComparison.Ordinal)
                && channel.Cells[place.Cell].Trial == line.Trial?.Number)
            {
                return number;
            }
        }

        return 0;
    }
}
