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
    private readonly bool[] _decided;
    private Ledger _ledger;
    private long _ledgerBytes;

    private ReviewBook(ReviewOptions options, StoredAudit audit, RecordingResult[] bare)
    {
        (Options, Audit, _bare, _ledger) = (options, audit, bare, audit.Decisions);
        _own = new OwnDecisions(options.By, options.IsBlind);
        Scope = options.Scope ?? (options.IsBlind ? ReviewScope.All : ReviewScope.Flagged);
        Seed = options.IsBlind ? options.Seed ?? _own.SeedIn(_ledger) ?? (uint)RandomNumberGenerator.GetInt32(1, int.MaxValue) : null;
        Cells = Seed is { } seed ? ReviewOrder.Blind(bare, Scope, seed) : ReviewOrder.Open(bare);
        _places = Cells.Select((cell, place) => (cell, place)).ToDictionary(one => one.cell, one => one.place);
        _decided = new bool[Cells.Length];
        _ledgerBytes = LengthOfLedger();
        Mark(Enumerable.Range(0, bare.Length));
    }

    /// <summary>How the audit is reviewed.</summary>
    public ReviewOptions Options { get; }

    /// <summary>The audit as it was opened.</summary>
    public StoredAudit Audit { get; }

    /// <summary>Which cells are to be looked at.</summary>
    public ReviewScope Scope { get; }

    /// <summary>The seed of the order; null unless the review is blind.</summary>
    public uint? Seed { get; }

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
        return book.Cells.IsEmpty ? throw ReviewErrors.NoCells(options.Folder) : book;
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
        return options.DataRoot is { } root && !Directory.Exists(root) ? throw ReviewErrors.NoData(root) : audit;
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

            Ledger now = Ledger.Read(Options.Folder);
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
    public bool IsDecided(int number)
    {
        lock (_gate)
        {
            return _decided[number - 1];
        }
    }

    /// <summary>The number of a cell; 0 when it is not among those to look at.</summary>
    public int NumberOf(ReviewCell cell) => _places.TryGetValue(cell, out int place) ? place + 1 : 0;

    /// <summary>How many cells with a verdict, of those to look at, are not decided.</summary>
    public int Left(Grade verdict)
    {
        lock (_gate)
        {
            return Enumerable.Range(0, Cells.Length).Count(place => VerdictAt(place) == verdict && IsLeft(place));
        }
    }

    /// <summary>The next undecided cell behind one, from the start again at the end; null when nothing is left to do.</summary>
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

            return null;
        }
    }

    // Who is shown the computed verdict through what is left to look at would not be blind: the scope is the same for all cells then.
    private bool IsLeft(int place) => !_decided[place] && ReviewOrder.Holds(Scope, VerdictAt(place));

    private Grade VerdictAt(int place) => _bare[Cells[place].Recording].Channels[Cells[place].Channel].Cells[Cells[place].Cell].Verdict;

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
                        _decided[place] = Options.IsBlind
                            ? own.Contains((of.Name, of.Cells[cell].Trial))
                            : FinalVerdict.DecisionOn(result, of, of.Cells[cell]) is not null;
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
