using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Decisions;
using ChannelAudit.Findings;
using ChannelAudit.Measures;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>Says what the page says about a cell, in the words of the report.</summary>
/// <param name="book">The cells.</param>
/// <param name="shelf">The recordings.</param>
/// <param name="pictures">The pictures.</param>
public sealed class CellDesk(ReviewBook book, RecordingShelf shelf, CellPictures pictures)
{
    private const string TimeFormat = "yyyy-MM-dd HH:mm";

    /// <summary>What is said about a cell.</summary>
    /// <param name="number">The number of the cell, from 1.</param>
    /// <exception cref="ChannelAuditException">When there is no such cell, or its result cannot be read.</exception>
    public CellView Of(int number)
    {
        if (number < 1 || number > book.Cells.Length)
        {
            throw ReviewErrors.NoCell(number, book.Cells.Length);
        }

        int seen = book.Ledger.Lines.Length;
        ReviewCell place = book.Cells[number - 1];
        RecordingResult bare = book.BareOf(place.Recording);
        CellView blind = Blind(number, place, bare) with { Seen = seen };
        return book.Options.IsBlind ? blind : Open(blind, place, bare);
    }

    /// <summary>Refuses a cell of which nothing is seen, or another signal than the one that was audited: nobody shall decide about it.</summary>
    /// <param name="number">The number of the cell, from 1.</param>
    /// <param name="cancel">Ends the wait for the recording's bytes to be looked at.</param>
    /// <exception cref="ChannelAuditException">When it is so.</exception>
    public async Task RequireSeen(int number, CancellationToken cancel)
    {
        if (book.Options.DataRoot is null && pictures.SheetOf(number) is null)
        {
            throw ReviewErrors.NothingShown();
        }

        await shelf.RequireAudited(book.Cells[number - 1].Recording, cancel);
    }

    /// <summary>A decision in words.</summary>
    /// <param name="one">The decision and what has become of it.</param>
    public static DecisionView Words(StatedDecision one)
    {
        ArgumentNullException.ThrowIfNull(one);
        Decision line = one.Decision;
        string about = (line.Channel, line.Trial) switch
        {
            (null, { } trial) => $"trial {trial.Number.Plain()}, all channels",
            ({ } channel, null) => $"{channel}, the channel itself",
            ({ } channel, { } trial) => $"{channel}, trial {trial.Number.Plain()}",
            _ => string.Empty,
        };
        string state = one.State switch
        {
            DecisionState.InForce => one.Note.Length == 0 ? "holds" : $"holds; {one.Note}",
            DecisionState.Superseded => $"superseded {one.Note}",
            DecisionState.Withdrawn => $"withdrawn {one.Note}",
            _ => $"not applied: {one.Note}",
        };
        return new DecisionView(line.Number, line.By, When(line), about, line.Verdict is { } verdict ? VerdictWords.Code(verdict) : string.Empty, line.Reason, state);
    }

    /// <summary>When a line was written.</summary>
    internal static string When(Decision line) => line.At.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture) + " UTC";

    // All that a blind person may know; the rest is added to it, never taken away.
    private CellView Blind(int number, ReviewCell place, RecordingResult bare)
    {
        ChannelResult channel = bare.Channels[place.Channel];
        Trial trial = ReviewBook.TrialOf(bare, channel.Cells[place.Cell]);
        (double from, double to, double least, double most) = pictures.RangeOf(number);
        double zero = pictures.ZeroOf(number);
        Task<FileCheck> check = shelf.CheckOf(place.Recording);
        FileCheck data = check.IsCompletedSuccessfully ? check.Result : FileCheck.Checking;
        bool hasSheet = pictures.SheetOf(number) is not null;
        return new CellView
        {
            Number = number,
            Channel = channel.Name,
            WindowFromS = Rounded((double)trial.WindowFromS - zero),
            WindowToS = Rounded((double)trial.WindowToS - zero),
            FromS = Rounded(from - zero),
            ToS = Rounded(to - zero),
            LeastS = Rounded(least - zero),
            MostS = Rounded(most - zero),
            IsDecided = book.IsDecided(number),
            Decisions = [.. book.OwnIn(bare).Where(one => IsAbout(one.Decision, channel.Name, trial.Number)).Select(Words).Select(Hidden)],
            Data = Code(data),
            DataWords = WordsOf(data, hasSheet),
            Obstacle = ObstacleOf(data, hasSheet),
            HasSheet = hasSheet,
            LongestS = CellPictures.LongestS,
            Next = book.NextAfter(number),
            Seen = 0,
        };
    }

    private static DecisionView Hidden(DecisionView own) => own with { About = string.Empty, State = "yours" };

    private CellView Open(CellView blind, ReviewCell place, RecordingResult bare)
    {
        RecordingResult result = shelf.ResultOf(place.Recording);
        ChannelResult channel = result.Channels[place.Channel];
        CellResult cell = channel.Cells[place.Cell];
        Trial trial = ReviewBook.TrialOf(result, cell);
        return blind with
        {
            Recording = result.Id,
            Trial = trial.Number,
            Label = trial.Label,
            When = Quantities.Stretch((double)trial.WindowFromS, (double)trial.WindowToS),
            Verdict = VerdictWords.Code(cell.Verdict),
            Final = VerdictWords.Code(FinalVerdict.OfTrial(bare, bare.Channels[place.Channel], bare.Channels[place.Channel].Cells[place.Cell])),
            Findings = [.. cell.Reasons.SelectMany(reason => Findings(result, channel, cell, reason))],
            NotAssessed = [.. cell.NotAssessed.Select(question => new OpenQuestionView(ReasonWords.For(question.Reason).Name, question.Cause))],
            Whole = Whole(bare, bare.Channels[place.Channel]),
            Alike = AlikeCells.To(book, blind.Number).Length,
            Measures =
            [
                .. cell.Measures.Where(measure => measure.Questionable is not null || measure.Reject is not null)
                    .OrderByDescending(measure => measure.Grade ?? Grade.Pass)
                    .Select(Measure),
            ],
            Decisions = [.. (bare.Decisions?.All ?? []).Where(one => IsAbout(one.Decision, channel.Name, trial.Number)).Select(Words)],
            Earlier = At(place with { Cell = place.Cell - 1 }),
            Later = At(place with { Cell = place.Cell + 1 }),
            Above = At(place with { Channel = place.Channel - 1 }),
            Below = At(place with { Channel = place.Channel + 1 }),
        };
    }

    private static ChannelStandView Whole(RecordingResult result, ChannelResult channel) => new(
        VerdictWords.Code(channel.Verdict),
        VerdictWords.Code(FinalVerdict.OfChannel(result, channel)),
        FinalVerdict.DecisionOn(result, channel) is not null,
        [.. channel.Reasons.Select(reason => ReasonWords.For(reason).Name)]);

    private int? At(ReviewCell place) => book.NumberOf(place) is > 0 and int number ? number : null;

    private static IEnumerable<FindingView> Findings(RecordingResult result, ChannelResult channel, CellResult cell, string reason)
    {
        foreach (EvidenceRow row in EvidenceRow.Of(result, channel, reason).Where(row => row.Cell?.Trial == cell.Trial))
        {
            foreach (Finding finding in row.Findings)
            {
                yield return new FindingView(
                    ReasonLetters.For(reason),
                    ReasonWords.For(reason).Name,
                    VerdictWords.Code(finding.Grade),
                    EvidenceTable.WordsOf(finding) + (row.IsCarried ? " (found in the channel)" : string.Empty),
                    [.. finding.Evidence.Select(one => $"{one.Measure} {Quantities.WithUnit(one.Value, one.Unit)}, limit {Quantities.WithUnit(one.Limit, one.Unit)}")],
                    EffectWords.Of(finding.Effect));
            }
        }
    }

    private static MeasureView Measure(GradedMeasure graded)
    {
        string name = graded.Value.Measure;
        (string unit, string meaning) = MeasureCatalog.Contains(name) ? (MeasureCatalog.Get(name).Unit, MeasureCatalog.Get(name).Meaning) : (string.Empty, string.Empty);
        return new MeasureView(
            name,
            meaning,
            graded.Value.Value is { } value ? Quantities.WithUnit(value, unit) : graded.Value.Note ?? "n/a",
            graded.Questionable is { } questionable ? Quantities.WithUnit(questionable, unit) : string.Empty,
            graded.Reject is { } reject ? Quantities.WithUnit(reject, unit) : string.Empty,
            graded.Grade is { } grade ? VerdictWords.Code(grade) : null);
    }

    private static bool IsAbout(Decision line, string channel, int trial) =>
        (line.Channel is null || string.Equals(line.Channel, channel, StringComparison.Ordinal)) && (line.Trial is null || line.Trial.Number == trial);

    private static double Rounded(double seconds) => Math.Round(seconds, 6);

    private static string Code(FileCheck check) => check switch
    {
        FileCheck.NoData => "none",
        FileCheck.Checking => "checking",
        FileCheck.Same => "same",
        FileCheck.Differs => "differs",
        _ => "missing",
    };

    private static string WordsOf(FileCheck check, bool hasSheet) => check switch
    {
        FileCheck.NoData when hasSheet => "The recordings were not given (--data ROOT): this is the audit's picture of the whole channel.",
        FileCheck.NoData => "Nothing of this trial can be shown: the recordings were not given, and the audit holds no picture of the channel. "
            + "Start the review with --data ROOT.",
        FileCheck.Differs => "This signal is not the one that was audited (another SHA-256). Nothing can be decided here.",
        FileCheck.Missing => "The recording is not below the folder given with --data, or cannot be read. Nothing can be decided here.",
        _ => string.Empty,
    };

    private static string ObstacleOf(FileCheck check, bool hasSheet) => check switch
    {
        FileCheck.NoData when !hasSheet => "Nothing can be decided here: nothing of this trial is shown. Start the review with --data ROOT.",
        FileCheck.Differs => "Nothing can be decided here: the signal is not the one that was audited.",
        FileCheck.Missing => "Nothing can be decided here: the recording is not there, or cannot be read.",
        _ => string.Empty,
    };
}
