using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ChannelAudit.Criteria;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Findings.Tasks;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Survey;

namespace ChannelAudit;

/// <summary>Everything that was read from a recording before any limit is asked: the same readings can be judged by several sets of limits.</summary>
internal sealed class AuditReadings
{
    private AuditReadings(Recording recording, AuditInput input, CancellationToken cancellation)
    {
        Input = input;
        Filter = ScoringFilter.Of(input.Setup.Scoring);
        Channels = AuditedChannels.Of(recording, input.Setup);
        Survey = RecordingSurvey.Of(recording, Channels, input.Trials, input.Setup, cancellation);
        Bridges = new BridgeJudge(Survey);
        TrialReadings[] windows = new TrialReadings[input.Trials.Length];
        TrialReadings?[] baselines = new TrialReadings?[input.Trials.Length];
        SharedItems trials = new(windows.Length, reader => ReadTrials(new TrialPass(reader, Survey), windows, baselines, cancellation));
        SideBySide.Run(
            recording,
            trials.Work,
            reader =>
            {
                States = PairStateRows.All(reader, Survey, Bridges.StatesOf, cancellation);
                trials.Work(reader);
            });
        Windows = ImmutableCollectionsMarshal.AsImmutableArray(windows);
        Baselines = ImmutableCollectionsMarshal.AsImmutableArray(baselines);
        Answers = new TaskAnswers(Survey, input.Setup, input.Trials, Windows);
        DurationS = recording.DurationS;
        Cases = [.. Survey.Channels.Select((_, i) => ChannelCases.Of(i, this))];
    }

    /// <summary>What came beside the samples.</summary>
    public AuditInput Input { get; }

    /// <summary>The filter that scoring will use.</summary>
    public ScoringFilter Filter { get; }

    /// <summary>The audited channels with their names.</summary>
    public ImmutableArray<(Channel Channel, string Name)> Channels { get; }

    /// <summary>The whole recording.</summary>
    public RecordingSurvey Survey { get; }

    /// <summary>Medians of the pairs, to be judged.</summary>
    public BridgeJudge Bridges { get; }

    /// <summary>Each trial's window.</summary>
    public ImmutableArray<TrialReadings> Windows { get; }

    /// <summary>Each trial's baseline; null where none was asked for.</summary>
    public ImmutableArray<TrialReadings?> Baselines { get; }

    /// <summary>How the channels answer tasks.</summary>
    public TaskAnswers Answers { get; }

    /// <summary>Rest and contractions of the pairs.</summary>
    public ImmutableArray<PairStateRows> States { get; private set; }

    /// <summary>The length of the recording in seconds.</summary>
    public double DurationS { get; }

    /// <summary>What the rules are asked about each channel.</summary>
    public ImmutableArray<ChannelCases> Cases { get; }

    /// <summary>Reads a recording.</summary>
    /// <param name="recording">An opened recording.</param>
    /// <param name="input">Trials and setup; no limit is looked at.</param>
    /// <param name="cancellation">Checked for every block of samples.</param>
    /// <exception cref="ChannelAuditException">When no channel is left to audit.</exception>
    public static AuditReadings Of(Recording recording, AuditInput input, CancellationToken cancellation) => new(recording, input, cancellation);

    /// <summary>Limits as they are asked of these readings: of what the scoring filter leaves, where one is stated.</summary>
    public AuditCriteria Asked(AuditCriteria criteria) => Filter.IsStated ? ScoredCriteria.Of(criteria, Filter) : criteria;

    private Action<int> ReadTrials(TrialPass pass, TrialReadings[] windows, TrialReadings?[] baselines, CancellationToken cancellation) => i =>
    {
        Trial trial = Input.Trials[i];
        windows[i] = pass.Read(trial.WindowFromS, trial.WindowToS, cancellation);
        baselines[i] = trial.BaselineFromS is { } from ? pass.Read(from, trial.OnsetS, cancellation) : null;
    };

    /// <summary>What is decided about every pair.</summary>
    /// <param name="criterion">The limits of a bridge.</param>
    public ImmutableArray<PairJudgement> Judge(Criterion criterion) =>
        [.. Survey.Pairs.Select((_, i) => Bridges.Judge(i, Input.Trials, [.. Windows.Select(window => window.Pairs[i])], criterion))];
}
