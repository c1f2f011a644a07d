using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Findings.Sessions;
using ChannelAudit.Findings.Tasks;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;
using ChannelAudit.Views;

namespace ChannelAudit;

/// <summary>The page to read first: the whole way from a recording to its verdicts.</summary>
public static class Audit
{
    /// <summary>Audits one recording: survey, trials, measures, findings, verdicts.</summary>
    /// <param name="recording">An opened recording.</param>
    /// <param name="input">Trials, setup and limits.</param>
    /// <param name="cancellation">Checked for every block of samples.</param>
    /// <exception cref="ChannelAuditException">When no channel is left to audit.</exception>
    public static RecordingResult Of(Recording recording, AuditInput input, CancellationToken cancellation)
    {
        AuditReadings readings = AuditReadings.Of(recording, input, cancellation);
        AuditCriteria criteria = readings.Asked(input.Criteria);
        RecordingSurvey survey = readings.Survey;
        ImmutableArray<Finding> swaps = LeadSwap.Find(readings.Answers, criteria.For(ReasonCode.LeadSwap), recording.DurationS);
        ImmutableArray<PairJudgement> pairs = readings.Judge(criteria.For(ReasonCode.Bridge));
        ImmutableArray<PairResult> rows = [];
        ImmutableArray<(ChannelResult Result, ImmutableArray<Finding> Information)> judged = [];
        ImmutableArray<MovedLimits>? sensitivity = null;
        SideBySide.Run(
            recording,
            _ =>
            {
                rows = [.. survey.Pairs.Select((_, i) => PairRows.Of(i, survey, input.Trials, readings.Windows, readings.States, pairs[i]))];
                judged = [.. survey.Channels.Select((_, i) => Judge(i, readings, criteria, pairs, swaps))];
            },
            _ => sensitivity = input.WithSensitivity ? LimitSweep.Of(readings, input.Criteria, cancellation) : null);
        ImmutableArray<ChannelResult> results = [.. judged.Select(channel => channel.Result)];
        return new RecordingResult
        {
            Id = input.Id,
            Path = input.Path,
            Sha256 = input.Sha256,
            Format = recording.Format,
            DurationS = recording.DurationS,
            Participant = input.Person.Participant,
            Group = input.Person.Group,
            Gaps = RecordedGap.Of(readings.Channels.Select(pair => pair.Channel)),
            Mains = survey.Mains,
            Scoring = readings.Filter.IsStated ? readings.Filter.InWords : null,
            TrialsFrom = input.TrialsFrom,
            Trials = input.Trials,
            Channels = input.WithViews ? ChannelViewer.AddTo(recording, survey, results, input.Trials, cancellation) : results,
            Skipped = AuditedChannels.Skipped(recording, readings.Channels),
            Pairs = input.WithViews ? PairViewer.AddTo(recording, survey, rows, pairs, readings.Bridges.StatesOf, cancellation) : rows,
            Information =
            [
                .. pairs.Select(pair => pair.Information).Append(readings.Bridges.CommonSource(pairs)).OfType<Finding>(),
                .. judged.SelectMany(channel => channel.Information),
                .. RecordingInformation.Of(recording, survey, input.Trials),
                .. ProtocolCheck.Of(input, [.. survey.Channels.Select(channel => channel.Name)], recording.DurationS),
            ],
            Warnings = [.. recording.Warnings, .. AuditedChannels.SitesLeftOut(recording, input.Setup, readings.Channels), .. input.Warnings],
            Sensitivity = sensitivity,
            MinimumTrials = input.Setup.Trials.Minimum,
            ExpectedConditions = ProtocolConditions.Of(input.Setup),
        };
    }

    private static (ChannelResult Result, ImmutableArray<Finding> Information) Judge(
        int index, AuditReadings readings, AuditCriteria criteria, ImmutableArray<PairJudgement> pairs, ImmutableArray<Finding> swaps)
    {
        ChannelCases channel = readings.Cases[index];
        ImmutableArray<Trial> trials = readings.Input.Trials;
        string name = channel.Channel.Name;
        VerdictPolicy policy = new(criteria);
        ChannelRules rules = new(channel.Channel, criteria);
        ImmutableArray<PairJudgement> own = [.. pairs.Where(pair => pair.A == index || pair.B == index)];
        ImmutableArray<Finding> carried = [.. swaps.Where(swap => swap.Channels.Contains(name, StringComparer.Ordinal))];
        string? bridgeOpen = BridgeGap.Of(index, readings.Survey, own, readings.Input.Setup);
        Finding? collapse = CollapseRule.OfTrials(channel.Whole);
        ImmutableArray<Finding> throughout = collapse is null ? carried : [.. carried, collapse];

        // Where the channel has no such limit, each trial holds the finding itself.
        Finding? inTrials = CollapseRule.Judge(channel.Whole).Grade == Grade.Pass ? collapse : null;
        ImmutableArray<CellResult>.Builder cells = ImmutableArray.CreateBuilder<CellResult>(trials.Length);
        List<(WindowCase Window, ImmutableArray<RuleOutcome> Outcomes)> cases = [];
        for (int trial = 0; trial < trials.Length; trial++)
        {
            cases.Add((channel.Windows[trial], rules.Judge(channel.Windows[trial])));
            CellResult cell = policy.Cell(
                name,
                trials[trial],
                channel.Windows[trial],
                cases[^1].Outcomes,
                channel.Baselines[trial] is { } before ? (before, rules.Judge(before)) : null,
                BridgedTrials.Of(index, own, trial, trials[trial], readings.Windows[trial], readings.Survey),
                bridgeOpen,
                throughout);
            cells.Add(Holding(cell, inTrials));
        }

        ChannelResult result = policy.Channel(channel.Whole, rules.Judge(channel.Whole), cells.MoveToImmutable(), trials, own, bridgeOpen, carried);
        return (result, ChannelInformation.Of(channel.Channel, [.. cases], channel.Whole, rules));
    }

    private static CellResult Holding(CellResult cell, Finding? finding) =>
        finding is null ? cell : cell with { Findings = [.. cell.Findings, finding with { Trial = cell.Trial }] };
}
