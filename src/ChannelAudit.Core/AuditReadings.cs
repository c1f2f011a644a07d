using System.Collections.Immutable;
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
        TrialPass pass = new(recording, Survey);
        Windows = [.. input.Trials.Select(trial => pass.Read(trial.WindowFromS, trial.WindowToS, cancellation))];
        Baselines = [.. input.Trials.Select(trial => trial.BaselineFromS is { } from ? pass.Read(from, trial.OnsetS, cancellation) : null)];
        Answers = new TaskAnswers(Survey, input.Setup, input.Trials, Windows);
        States = PairStateRows.All(recording, Survey, Bridges.StatesOf, cancellation);
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
    public ImmutableArray<PairStateRows> States { get; }

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

    /// <summary>What is decided about every pair.</summary>
    /// <param name="criterion">The limits of a bridge.</param>
    public ImmutableArray<PairJudgement> Judge(Criterion criterion) =>
        [.. Survey.Pairs.Select((_, i) => Bridges.Judge(i, Input.Trials, [.. Windows.Select(window => window.Pairs[i])], criterion))];
}
