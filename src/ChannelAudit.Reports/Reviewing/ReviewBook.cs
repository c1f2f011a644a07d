using System.Collections.Immutable;
using System.Security.Cryptography;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Deciding;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>All cells of an audit in the order in which they are looked at, and which of them are decided; it follows the ledger as it grows.</summary>
/// <remarks>Of results it keeps names, trials and verdicts only; what else is known about a cell is read when it is shown. Safe for use by several threads.</remarks>
public sealed class ReviewBook
{
    private readonly Lock _gate = new();
    private readonly RecordingResult[] _bare;
    private readonly Dictionary<ReviewCell, int> _places;
    private readonly OwnDecisions _own;
    private readonly string?[] _decidedBy;
    private Ledger _ledger;
    private long _ledgerBytes;

    private ReviewBook(ReviewOptions options, StoredAudit audit, RecordingResult[] bare)
    {
        (Options, Audit, _bare, _ledger) = (options, audit, bare, audit.Decisions);
        _own = new OwnDecisions(options.By, options.IsBlind);
        LinesAtStart = _ledger.Lines.Length;
        Order = options.IsBlind ? OrderOf(options, _own.OrderIn(_ledger)) : null;
        Scope = Order?.Scope ?? options.Scope ?? ReviewScope.Flagged;
        ImmutableArray<ReviewCell> all = Order is { } order ? ReviewOrder.Blind(bare, order) : ReviewOrder.Open(bare);
        SeenCells seen = new(_ledger, options.By);
        Cells = options.IsBlind ? [.. all.Where(cell => !seen.Hold(bare[cell.Recording], cell))] : all;
        LeftOut = all.Length - Cells.Length;
        _places = Cells.Select((cell, place) => (cell, place)).ToDictionary(one => one.cell, one => one.place);
        _decidedBy = new string?[Cells.Length];

        // Others may have decided while results were read: the first look reads the ledger again.
        _ledgerBytes = -1;
        Mark(Enumerable.Range(0, bare.Length));
    }

    /// <summary>How the audit is reviewed.</summary>
    public ReviewOptions Options { get; }

    /// <summary>The audit as it was opened.</summary>
    public StoredAudit Audit { get; }

    /// <summary>Which cells are to be looked at.</summary>
    public ReviewScope Scope { get; }

    /// <summary>The seed of the order; null unless the review is blind.</summary>
    public uint? Seed => Order?.Seed;

    /// <summary>How many cells are left out of a blind review, since this person has decided them with everything in view.</summary>
    public int LeftOut { get; }

    /// <summary>Lines of the ledger when the review was started.</summary>
    public int LinesAtStart { get; }

    /// <summary>The cells in order; cell number 1 is the first.</summary>
    public ImmutableArray<ReviewCell> Cells { get; }

    /// <summary>The ledger as it was read last.</summary>
    public Ledger Ledger
    {
        get
        {
            lock (_gate)
            {
                return _ledger;
            }
        }
    }

    /// <summary>This person's decisions.</summary>
    internal OwnDecisions Own => _own;

    /// <summary>Which cells are gone through blind, and in which order; null unless the review is blind.</summary>
    internal BlindOrder? Order { get; }

    /// <summary>What a decision of this review states as its origin.</summary>
    internal ReviewOrigin Origin => Order is { } order ? ReviewOrigin.Blind(order) : ReviewOrigin.Open;

    /// <summary>Opens an audit for a review.</summary>
    /// <param name="options">How.</param>
    /// <param name="cancel">Checked for every recording.</param>
    /// <exception cref="ChannelAuditException">When it is no audit, its ledger is not whole, a result cannot be read, or there is nothing to look at.</exception>
    public static ReviewBook Open(ReviewOptions options, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(options);
        StoredAudit audit = Checked(options);
        RecordingResult[] bare = new RecordingResult[audit.Recordings.Length];
        for (int i = 0; i < bare.Length; i++)
        {
            cancel.ThrowIfCancellationRequested();
            bare[i] = Bare(audit.ResultOf(audit.Recordings[i]));
        }

        ReviewBook book = new(options, audit, bare);
        return !book.Cells.IsEmpty ? book
            : throw (book.LeftOut > 0 ? ReviewErrors.AllSeen(options.By ?? string.Empty, book.LeftOut) : ReviewErrors.NoCells(options.Folder));
    }

    /// <summary>Opens the audit and refuses what cannot be reviewed so; results are not looked at.</summary>
    /// <exception cref="ChannelAuditException">As for <see cref="Open"/>.</exception>
    public static StoredAudit Checked(ReviewOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        StoredAudit audit = options is { IsReadOnly: false, Version: { } version }
            ? DecisionDesk.Open(options.Folder, version)
            : StoredAudit.Open(options.Folder);
        if (options.IsBlind && options.DataRoot is null)
        {
            throw ReviewErrors.BlindNeedsData();
        }

        _ = options.By is { } name ? DecisionText.Checked("the name", name, DecisionText.LongestName) : null;
        return options.DataRoot is not { } root ? audit
            : !Directory.Exists(root) ? throw ReviewErrors.NoData(root)
            : RecordingShelf.Found(audit, root) == 0 ? throw ReviewErrors.NoneFound(root, audit.Recordings.Length)
            : audit;
    }

    /// <summary>Reads the ledger again when it has grown, by whomever.</summary>
    /// <exception cref="ChannelAuditException">When it is not the continuation of what was read; what was read before is kept.</exception>
    public void Follow()
    {
        lock (_gate)
        {
            long bytes = LengthOfLedger();
            if (bytes == _ledgerBytes)
            {
                return;
            }

            Ledger now = _ledger.ReadAgain(Options.Folder);
            now.RequireContinues(_ledger.Mark, Options.Folder);
            HashSet<string> touched = now.Lines.Skip(_ledger.Lines.Length)
                .Select(line => line.Withdraws is { } number ? now.Lines[number - 1].Recording! : line.Recording!)
                .ToHashSet(StringComparer.Ordinal);
            (_ledger, _ledgerBytes) = (now, bytes);
            Mark(Enumerable.Range(0, _bare.Length).Where(place => touched.Contains(_bare[place].Id)));
        }
    }

    /// <summary>Names, trials, verdicts and decisions of a recording; no measures, no findings.</summary>
    /// <param name="recording">Its place.</param>
    public RecordingResult BareOf(int recording)
    {
        lock (_gate)
        {
            return _bare[recording];
        }
    }

    /// <summary>Whether a cell is decided: in a blind review by this person, blind; else by anybody.</summary>
    /// <param name="number">The number of the cell, from 1.</param>
    public bool IsDecided(int number) => DecidedBy(number) is not null;

    /// <summary>Whose decision holds for a cell; null when it is not decided.</summary>
    /// <param name="number">The number of the cell, from 1.</param>
    public string? DecidedBy(int number)
    {
        lock (_gate)
        {
            return _decidedBy[number - 1];
        }
    }

    /// <summary>The number of a cell; 0 when it is not among those to look at.</summary>
    public int NumberOf(ReviewCell cell) => _places.TryGetValue(cell, out int place) ? place + 1 : 0;

    /// <summary>The computed verdict of a cell.</summary>
    /// <param name="number">The number of the cell, from 1.</param>
    public Grade VerdictOf(int number)
    {
        lock (_gate)
        {
            return VerdictAt(number - 1);
        }
    }

    /// <summary>
    /// The next undecided cell behind one, from the start again at the end; when there is none, the first cell of the next channel that is not decided as a whole;
    /// null when nothing is left to do elsewhere.
    /// </summary>
    /// <param name="number">The number of a cell; 0 for the first one.</param>
    public int? NextAfter(int number)
    {
        lock (_gate)
        {
            IEnumerable<int> places = Enumerable.Range(number, Cells.Length - number).Concat(Enumerable.Range(0, Math.Max(0, number - 1)));
            foreach (int place in places.Where(IsLeft))
            {
                return place + 1;
            }
        }

        int[] channels = [.. OpenChannels.Of(this).Where(other => number == 0 || !AreOfOneChannel(Cells[number - 1], Cells[other - 1]))];
        return channels.Length == 0 ? null : channels.Where(other => other > number).DefaultIfEmpty(channels[0]).First();
    }

    /// <summary>The number of the cell that a decision was made on, or the first of what it is about; 0 when that is not among those to look at.</summary>
    public int NumberOf(Decision line)
    {
        int recording = Array.FindIndex(_bare, result => string.Equals(result.Id, line.Recording, StringComparison.Ordinal));
        if (recording < 0)
        {
            return 0;
        }

        RecordingResult result = BareOf(recording);
        return Enumerable.Range(0, result.Channels.Length)
            .Where(channel => line.Channel is null || string.Equals(result.Channels[channel].Name, line.Channel, StringComparison.Ordinal))
            .SelectMany(channel => Enumerable.Range(0, result.Channels[channel].Cells.Length)
                .Where(cell => line.Trial is null || result.Channels[channel].Cells[cell].Trial == line.Trial.Number)
                .Select(cell => NumberOf(new ReviewCell(recording, channel, cell))))
            .Where(number => number > 0)
            .DefaultIfEmpty(0)
            .Min();
    }

    private static bool AreOfOneChannel(ReviewCell one, ReviewCell other) => (one.Recording, one.Channel) == (other.Recording, other.Channel);

    // Who is shown the computed verdict through what is left to look at would not be blind: the scope is the same for all cells then.
    private bool IsLeft(int place) => _decidedBy[place] is null && ReviewOrder.Holds(Scope, VerdictAt(place));

    private Grade VerdictAt(int place) => _bare[Cells[place].Recording].Channels[Cells[place].Channel].Cells[Cells[place].Cell].Verdict;

    // Started again without being told otherwise, a blind person goes on where they were.
    private static BlindOrder OrderOf(ReviewOptions options, BlindOrder? last) => new(
        options.Seed ?? last?.Seed ?? (uint)RandomNumberGenerator.GetInt32(1, int.MaxValue),
        options.Scope ?? (options.Seed is null ? last?.Scope : null) ?? ReviewScope.All);

    private long LengthOfLedger()
    {
        FileInfo file = new(Path.Combine(Options.Folder, Ledger.FileName));
        return file.Exists ? file.Length : 0;
    }

    private void Mark(IEnumerable<int> recordings)
    {
        foreach (int recording in recordings)
        {
            RecordingResult result = _bare[recording].With(_ledger, Audit.Criteria.Sha256);
            _bare[recording] = result;
            HashSet<(string? Channel, int? Trial)> own = [.. OwnIn(result).Select(one => (one.Decision.Channel, one.Decision.Trial?.Number))];
            for (int channel = 0; channel < result.Channels.Length; channel++)
            {
                for (int cell = 0; cell < result.Channels[channel].Cells.Length; cell++)
                {
                    if (_places.TryGetValue(new ReviewCell(recording, channel, cell), out int place))
                    {
                        ChannelResult of = result.Channels[channel];
                        _decidedBy[place] = !Options.IsBlind ? FinalVerdict.DecisionOn(result, of, of.Cells[cell])?.Decision.By
                            : own.Contains((of.Name, of.Cells[cell].Trial)) ? Options.By : null;
                    }
                }
            }
        }
    }

    /// <summary>This person's decisions about a recording that stand, the last of each subject last; a later one of somebody else takes nothing from them.</summary>
    internal IEnumerable<StatedDecision> OwnIn(RecordingResult result) => (result.Decisions?.All ?? [])
        .Where(one => one.State is DecisionState.InForce or DecisionState.Superseded && _own.Holds(one.Decision));

    private static RecordingResult Bare(RecordingResult result) => result with
    {
        Channels = [.. result.Channels.Select(channel => channel with
        {
            Signal = null,
            Measures = [],
            Findings = [],
            NotAssessed = [],
            Cells = [.. channel.Cells.Select(cell => cell with { Measures = [], BaselineMeasures = [], Findings = [], NotAssessed = [] })],
        })],
        Pairs = [],
        Information = [],
        Warnings = [],
        Skipped = [],
        Impedance = null,
    };

    /// <summary>The trial of a cell.</summary>
    internal static Trial TrialOf(RecordingResult result, CellResult cell) => result.Trials.First(trial => trial.Number == cell.Trial);
}
