using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>How much of a review is done, counted in one pass, and in words.</summary>
internal sealed class ReviewTally
{
    private static readonly Grade[] Grades = [Grade.Questionable, Grade.Reject, Grade.Pass];

    private readonly ReviewBook _book;
    private readonly Dictionary<Grade, int> _left = Grades.ToDictionary(grade => grade, _ => 0);
    private readonly Dictionary<Grade, int> _beyond = Grades.ToDictionary(grade => grade, _ => 0);
    private readonly int _listed;
    private readonly int _byOthers;

    private ReviewTally(ReviewBook book)
    {
        _book = book;
        Channels = OpenChannels.Of(book).Length;
        for (int number = 1; number <= book.Cells.Length; number++)
        {
            Grade verdict = book.VerdictOf(number);
            string? by = book.DecidedBy(number);
            bool isListed = ReviewOrder.Holds(book.Scope, verdict);
            _listed += isListed ? 1 : 0;
            _byOthers += isListed && by is not null && book.Options.By is { } own && !string.Equals(by, own, StringComparison.Ordinal) ? 1 : 0;
            (isListed ? _left : _beyond)[verdict] += by is null ? 1 : 0;
        }
    }

    /// <summary>Trials of the list that are not decided.</summary>
    public int Trials => _left.Values.Sum();

    /// <summary>Channels that are not decided as a whole.</summary>
    public int Channels { get; }

    /// <summary>What is left to look at: <c>12 questionable, 3 reject, and 2 channels as a whole</c>.</summary>
    public string Left
    {
        get
        {
            string trials = _book.Options.IsBlind ? Trials == 0 ? string.Empty : Quantities.Many(Trials, "cell") : InWords(_left);
            string channels = Channels == 0 ? string.Empty : $"{Quantities.Many(Channels, "channel")} as a whole";
            return (trials.Length, channels.Length) switch
            {
                (0, 0) => "nothing",
                (_, 0) => trials,
                (0, _) => channels,
                _ => $"{trials}, and {channels}",
            };
        }
    }

    /// <summary>What is done: <c>3 of 117 decided, 1 of them by others</c>. A blind person hears nothing of others.</summary>
    public string Progress => $"{Decided.Plain()} of {_listed.Plain()} decided"
        + (_book.Options.IsBlind || _byOthers == 0 ? string.Empty : $", {_byOthers.Plain()} of them by others");

    /// <summary>What to know when nothing is left; empty before.</summary>
    public string Done
    {
        get
        {
            if (Trials + Channels > 0)
            {
                return string.Empty;
            }

            bool areRejected = _book.Scope == ReviewScope.Questionable && _beyond[Grade.Reject] > 0;
            string others = _book.Options.IsBlind ? string.Empty
                : areRejected ? $"{_beyond[Grade.Reject].Plain()} {VerdictWords.Code(Grade.Reject)}" : InWords(_beyond);
            string beyond = others.Length == 0 ? string.Empty : $" {others} are not on it (--cells {(areRejected ? "flagged" : "all")}).";
            string tables = _book.Options.IsReadOnly ? string.Empty
                : _book.Options.IsBlind ? " Ctrl-C brings tables up to date." : " Ctrl-C, or Update tables, brings tables up to date.";
            return $"This list is done: {Decided.Plain()} decided.{beyond}{tables}";
        }
    }

    private int Decided => _listed - Trials;

    /// <summary>Counts.</summary>
    public static ReviewTally Of(ReviewBook book) => new(book);

    private static string InWords(Dictionary<Grade, int> counts) =>
        string.Join(", ", Grades.Where(grade => counts[grade] > 0).Select(grade => $"{counts[grade].Plain()} {VerdictWords.Code(grade)}"));
}
