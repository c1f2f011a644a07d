using ChannelAudit.Decisions;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Text;

namespace ChannelAudit.Review;

/// <summary>What the terminal says when a review starts, each line ended by LF.</summary>
internal static class StartWords
{
    private const string AllInView = "with everything in view";

    /// <summary>The words.</summary>
    /// <param name="book">The cells.</param>
    /// <param name="pictures">The pictures.</param>
    public static string Of(ReviewBook book, CellPictures pictures)
    {
        ReviewState state = ReviewState.Of(book);
        string[] lines =
        [
            $"Left to look at: {state.Left}; {state.Progress}. A cell is one trial of one channel.",
            Sight(book, pictures),
            .. Blind(book),
            .. book.Options is { IsReadOnly: false, By: { } by } ? Person(book, by) : Array.Empty<string>(),
            (state.IsReadOnly ? "Read-only. Ctrl-C ends the review." : "Ctrl-C ends the review; every decision is on the disk at once."),
        ];
        return string.Concat(lines.Select(line => line + "\n"));
    }

    // Without a signal or a picture nothing can be decided: said before anybody tries.
    private static string Sight(ReviewBook book, CellPictures pictures)
    {
        if (book.Options.DataRoot is { } root)
        {
            return $"{RecordingShelf.Found(book.Audit, root).Plain()} of {Quantities.Many(book.Audit.Recordings.Length, "recording")} found below {OneLine.Of(root)}.";
        }

        int[] channels =
        [
            .. Enumerable.Range(1, book.Cells.Length).DistinctBy(number => book.Cells[number - 1] with { Cell = 0 }),
        ];
        int shown = channels.Count(number => pictures.SheetOf(number) is not null);
        return $"Pictures of {shown.Plain()} of {Quantities.Many(channels.Length, "channel")}; give --data ROOT to see the signals.";
    }

    private static IEnumerable<string> Blind(ReviewBook book)
    {
        if (book.Seed is not { } seed)
        {
            yield break;
        }

        string leftOut = book.LeftOut == 0 ? string.Empty : $" Left out: {Quantities.Many(book.LeftOut, "cell")} that you have decided {AllInView}.";
        yield return FormattableString.Invariant($"Blind, in the order of seed {seed}.{leftOut}");
        yield return $"A blind decision never takes the place of one made {AllInView}.";
    }

    // A name that was typed otherwise than before is another person: decisions would not be found again. A blind person is told no other names.
    private static IEnumerable<string> Person(ReviewBook book, string by)
    {
        Ledger ledger = book.Ledger;
        Decision[] made =
        [
            .. ledger.Lines.Where(line => line.Action == DecisionAction.Decide && line.Blind == book.Options.IsBlind && ledger.WithdrawnBy(line.Number) is null),
        ];
        int own = made.Count(line => string.Equals(line.By, by, StringComparison.Ordinal));
        string others = string.Join(", ", made.CountBy(line => line.By, StringComparer.Ordinal)
            .OrderByDescending(one => one.Value).ThenBy(one => one.Key, StringComparer.Ordinal)
            .Select(one => $"{OneLine.Of(one.Key)} ({one.Value.Plain()})"));
        string soFar = others.Length == 0 || book.Options.IsBlind ? string.Empty : $"; so far: {others}";
        string how = book.Options.IsBlind ? " blind" : string.Empty;
        yield return own > 0
            ? $"{OneLine.Of(by)} has made {Quantities.Many(own, "decision")} here{how}."
            : $"{OneLine.Of(by)} has decided nothing here{how} yet{soFar}.";
    }
}
