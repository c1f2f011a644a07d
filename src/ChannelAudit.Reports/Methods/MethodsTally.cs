using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Fairness;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Studies;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Methods;

/// <summary>Gathers the numbers of a methods paragraph, one recording at a time; no recording is kept.</summary>
/// <remarks>
/// A trial counts once a channel. Only trials that are scored count, rest and tasks are not; excluded is what has the final verdict reject. Add recordings in
/// the order of their ids: sums of seconds depend on it in their last digit.
/// </remarks>
public sealed class MethodsTally
{
    private readonly SortedDictionary<string, VerdictTally> _byChannel = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, VerdictTally> _byCondition = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ReasonTally> _byReason = new(StringComparer.Ordinal);

    /// <summary>Recordings audited, with their lengths in s.</summary>
    public SpreadTally Recordings { get; } = new();

    /// <summary>Recordings that could not be read.</summary>
    public int Unread { get; set; }

    /// <summary>Whether exclusions are even, of all recordings that were added; null until they are.</summary>
    public FairnessReport? Fairness { get; set; }

    /// <summary>Recordings by file format.</summary>
    public SortedDictionary<string, int> Formats { get; } = new(StringComparer.Ordinal);

    /// <summary>Channels by sampling rate in Hz.</summary>
    public SortedDictionary<double, int> Rates { get; } = [];

    /// <summary>Channels by the band that was used, in Hz.</summary>
    public SortedDictionary<(double FromHz, double ToHz), int> Bands { get; } = [];

    /// <summary>Recordings by nominal mains frequency in Hz, as stated or seen in the data.</summary>
    public SortedDictionary<double, int> Mains { get; } = [];

    /// <summary>Recordings for which neither a setup nor a clear peak says the mains frequency.</summary>
    public int MainsUnseen { get; private set; }

    /// <summary>Recordings that are other than the rest of the study, by kind and in the order of the kinds.</summary>
    public ImmutableArray<StudyFinding> Odd { get; set; } = [];

    /// <summary>Recordings that are named as other than the rest, each once.</summary>
    public int OddRecordings => Odd.SelectMany(one => one.Recordings).Distinct(StringComparer.Ordinal).Count();

    /// <summary>The same by kind.</summary>
    public ImmutableArray<(string Kind, int Recordings)> OddByKind =>
    [
        .. OddKind.All
            .Select(kind => (kind, Odd.Where(one => string.Equals(one.Kind, kind, StringComparison.Ordinal)).SelectMany(one => one.Recordings).Distinct(StringComparer.Ordinal).Count()))
            .Where(entry => entry.Item2 > 0),
    ];

    /// <summary>Recordings by where their trials came from.</summary>
    public SortedDictionary<string, int> TrialSources { get; } = new(StringComparer.Ordinal);

    /// <summary>Recordings by the scoring filter in words; the empty text stands for none.</summary>
    public SortedDictionary<string, int> ScoringFilters { get; } = new(StringComparer.Ordinal);

    /// <summary>Recordings by the usable trials that a condition needs.</summary>
    public SortedDictionary<int, int> Minimums { get; } = [];

    /// <summary>Scoring windows of the scored trials, in s.</summary>
    public SpreadTally ScoredTrials { get; } = new();

    /// <summary>Trials of rest.</summary>
    public int RestTrials { get; private set; }

    /// <summary>Trials of tasks.</summary>
    public int TaskTrials { get; private set; }

    /// <summary>Channels in the files that were not audited; signals that only hold the events of a file are none.</summary>
    public int SkippedChannels { get; private set; }

    /// <summary>Channels by final verdict, each counted once a recording.</summary>
    public VerdictTally Channels { get; } = new();

    /// <summary>Scored trials by final verdict, each counted once a channel.</summary>
    public VerdictTally Trials { get; } = new();

    /// <summary>Verdicts of channels that a person gave.</summary>
    public DecisionTally DecidedChannels { get; } = new();

    /// <summary>Verdicts of scored trials that a person gave, each counted once a channel.</summary>
    public DecisionTally DecidedTrials { get; } = new();

    /// <summary>Decisions that are not applied, since what they were about has changed.</summary>
    public int StaleDecisions { get; private set; }

    /// <summary>Scored trials, each counted once a channel, for which something was not assessed.</summary>
    public int TrialsWithGaps { get; private set; }

    /// <summary>Channels for which something was not assessed over the whole recording.</summary>
    public int ChannelsWithGaps { get; private set; }

    /// <summary>Combinations of recording, channel and condition, and how many of them have too few usable trials.</summary>
    public Share TooFewTrials { get; private set; }

    /// <summary>Scored trials by channel name, ordinal order.</summary>
    public IReadOnlyDictionary<string, VerdictTally> ByChannel => _byChannel;

    /// <summary>Scored trials by condition, ordinal order; the empty text stands for trials without a label.</summary>
    public IReadOnlyDictionary<string, VerdictTally> ByCondition => _byCondition;

    /// <summary>Every reason that stands somewhere, in the fixed order of the codes.</summary>
    public ImmutableArray<(string Reason, ReasonTally Tally)> ByReason =>
    [
        .. _byReason
            .OrderBy(pair => ReasonCode.All.Contains(pair.Key, StringComparer.Ordinal) ? ReasonCode.All.IndexOf(pair.Key) : ReasonCode.All.Length)
            .ThenBy(pair => pair.Key, StringComparer.Ordinal)
            .Select(pair => (pair.Key, pair.Value)),
    ];

    /// <summary>Adds a recording.</summary>
    public void Add(RecordingResult recording)
    {
        ArgumentNullException.ThrowIfNull(recording);
        Recordings.Add(recording.DurationS);
        Count(Formats, recording.Format);
        Count(TrialSources, recording.TrialsFrom);
        Count(Minimums, recording.MinimumTrials);
        Count(ScoringFilters, recording.Scoring ?? string.Empty);
        if (recording.Mains.IsGuess)
        {
            MainsUnseen++;
        }
        else
        {
            Count(Mains, recording.Mains.NominalHz);
        }

        SkippedChannels += recording.Skipped.Count(skipped => !skipped.IsAnnotations);
        StaleDecisions += recording.Decisions?.Count(DecisionState.Stale) ?? 0;
        Dictionary<int, Trial> scored = AddTrials(recording);
        foreach (ChannelResult channel in recording.Channels)
        {
            AddChannel(recording, channel);
            foreach (CellResult cell in channel.Cells)
            {
                if (scored.TryGetValue(cell.Trial, out Trial? trial))
                {
                    AddCell(channel, cell, trial, FinalVerdict.OfTrial(recording, channel, cell));
                    DecidedTrials.Add(cell.Verdict, FinalVerdict.DecisionOn(recording, channel, cell));
                }
            }
        }

        ImmutableArray<ConditionCount> conditions = ConditionCounts.Of(recording);
        TooFewTrials = new Share(TooFewTrials.Count + conditions.Count(condition => !condition.Enough), TooFewTrials.Total + conditions.Length);
    }

    private Dictionary<int, Trial> AddTrials(RecordingResult recording)
    {
        Dictionary<int, Trial> scored = [];
        foreach (Trial trial in recording.Trials)
        {
            switch (trial.Role)
            {
                case TrialRole.Rest:
                    RestTrials++;
                    break;
                case TrialRole.Task:
                    TaskTrials++;
                    break;
                default:
                    scored.Add(trial.Number, trial);
                    ScoredTrials.Add((double)(trial.WindowToS - trial.WindowFromS));
                    break;
            }
        }

        return scored;
    }

    private void AddChannel(RecordingResult recording, ChannelResult channel)
    {
        Grade verdict = FinalVerdict.OfChannel(recording, channel);
        Count(Rates, channel.RateHz);
        Count(Bands, (channel.BandFromHz, channel.BandToHz));
        Channels.Add(verdict);
        DecidedChannels.Add(channel.Verdict, FinalVerdict.DecisionOn(recording, channel));
        foreach (string reason in channel.Reasons)
        {
            Reason(reason).AddChannel(verdict);
        }

        ChannelsWithGaps += channel.NotAssessed.IsEmpty ? 0 : 1;
        foreach (string reason in Distinct(channel.NotAssessed))
        {
            Reason(reason).ChannelsNotAssessed++;
        }
    }

    private void AddCell(ChannelResult channel, CellResult cell, Trial trial, Grade verdict)
    {
        Trials.Add(verdict);
        Entry(_byChannel, channel.Name).Add(verdict);
        Entry(_byCondition, trial.Label ?? string.Empty).Add(verdict);
        foreach (string reason in cell.Reasons)
        {
            Reason(reason).AddTrial(verdict);
        }

        TrialsWithGaps += cell.NotAssessed.IsEmpty ? 0 : 1;
        foreach (string reason in Distinct(cell.NotAssessed))
        {
            Reason(reason).TrialsNotAssessed++;
        }
    }

    private static IEnumerable<string> Distinct(ImmutableArray<NotAssessed> missing) =>
        missing.Select(one => one.Reason).Distinct(StringComparer.Ordinal);

    private static void Count<T>(SortedDictionary<T, int> counts, T value)
        where T : notnull => counts[value] = counts.GetValueOrDefault(value) + 1;

    private static VerdictTally Entry(SortedDictionary<string, VerdictTally> tallies, string name)
    {
        if (!tallies.TryGetValue(name, out VerdictTally? tally))
        {
            tally = new VerdictTally();
            tallies.Add(name, tally);
        }

        return tally;
    }

    private ReasonTally Reason(string code)
    {
        if (!_byReason.TryGetValue(code, out ReasonTally? tally))
        {
            tally = new ReasonTally();
            _byReason.Add(code, tally);
        }

        return tally;
    }
}
