using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Findings.Sessions;
using ChannelAudit.Findings.Tasks;
using ChannelAudit.Measures;
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
        ScoringFilter filter = ScoringFilter.Of(input.Setup.Scoring);
        input = filter.IsStated ? input with { Criteria = ScoredCriteria.Of(input.Criteria, filter) } : input;
        ImmutableArray<(Channel Channel, string Name)> channels = AuditedChannels.Of(recording, input.Setup);
        RecordingSurvey survey = RecordingSurvey.Of(recording, channels, input.Trials, input.Setup, cancellation);
        BridgeJudge bridges = new(survey, input.Criteria.For(ReasonCode.Bridge));

        TrialPass pass = new(recording, survey);
        ImmutableArray<TrialReadings> windows =
            [.. input.Trials.Select(trial => pass.Read(trial.WindowFromS, trial.WindowToS, cancellation))];
        ImmutableArray<TrialReadings?> baselines =
            [.. input.Trials.Select(trial => trial.BaselineFromS is { } from ? pass.Read(from, trial.OnsetS, cancellation) : null)];
        TaskAnswers answers = new(survey, input.Setup, input.Trials, windows);
        ImmutableArray<Finding> swaps = LeadSwap.Find(answers, input.Criteria.For(ReasonCode.LeadSwap), recording.DurationS);
        ImmutableArray<PairStateRows> states = PairStateRows.All(recording, survey, bridges.StatesOf, cancellation);

        ImmutableArray<PairJudgement> pairs =
            [.. survey.Pairs.Select((_, i) => bridges.Judge(i, input.Trials, [.. windows.Select(window => window.Pairs[i])]))];
        ImmutableArray<PairResult> rows = [.. survey.Pairs.Select((_, i) => PairRows.Of(i, survey, input.Trials, windows, states, pairs[i]))];
        ImmutableArray<(ChannelResult Result, ImmutableArray<Finding> Information)> judged =
            [.. survey.Channels.Select((_, i) => Judge(i, survey, input, windows, baselines, pairs, answers, swaps))];
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
            Gaps = RecordedGap.Of(channels.Select(pair => pair.Channel)),
            Mains = survey.Mains,
            Scoring = filter.IsStated ? filter.InWords : null,
            TrialsFrom = input.TrialsFrom,
            Trials = input.Trials,
            Channels = input.WithViews ? ChannelViewer.AddTo(recording, survey, results, input.Trials, cancellation) : results,
            Skipped = AuditedChannels.Skipped(recording, channels),
            Pairs = input.WithViews ? PairViewer.AddTo(recording, survey, rows, pairs, bridges.StatesOf, cancellation) : rows,
            Information =
            [
                .. pairs.Select(pair => pair.Information).Append(bridges.CommonSource(pairs)).OfType<Finding>(),
                .. judged.SelectMany(channel => channel.Information),
                .. RecordingInformation.Of(recording, survey, input.Trials, cancellation),
                .. ProtocolCheck.Of(input, [.. survey.Channels.Select(channel => channel.Name)], recording.DurationS),
            ],
            Warnings = [.. recording.Warnings, .. AuditedChannels.SitesLeftOut(recording, input.Setup, channels), .. input.Warnings],
            MinimumTrials = input.Setup.Trials.Minimum,
            ExpectedConditions = ProtocolConditions.Of(input.Setup),
        };
    }

    private static (ChannelResult Result, ImmutableArray<Finding> Information) Judge(
        int index,
        RecordingSurvey survey,
        AuditInput input,
        ImmutableArray<TrialReadings> windows,
        ImmutableArray<TrialReadings?> baselines,
        ImmutableArray<PairJudgement> pairs,
        TaskAnswers answers,
        ImmutableArray<Finding> swaps)
    {
        ChannelSurvey channel = survey.Channels[index];
        VerdictPolicy policy = new(input.Criteria);
        ChannelRules rules = new(channel, input.Criteria);
        ImmutableArray<PairJudgement> own = [.. pairs.Where(pair => pair.A == index || pair.B == index)];
        ImmutableArray<Finding> carried = [.. swaps.Where(swap => swap.Channels.Contains(channel.Name, StringComparer.Ordinal))];
        string? bridgeOpen = BridgeGap.Of(index, survey, own, input.Setup);
        ImmutableArray<CellResult>.Builder cells = ImmutableArray.CreateBuilder<CellResult>(input.Trials.Length);
        WindowCase whole = new(channel, channel.All, true, input.Criteria, answers.Best(index));
        Finding? collapse = CollapseRule.OfTrials(whole);
        ImmutableArray<Finding> throughout = collapse is null ? carried : [.. carried, collapse];

        // Where the channel has no such limit, each trial holds the finding itself.
        Finding? inTrials = CollapseRule.Judge(whole).Grade == Grade.Pass ? collapse : null;
        List<(WindowCase Window, ImmutableArray<RuleOutcome> Outcomes)> cases = [];
        for (int trial = 0; trial < input.Trials.Length; trial++)
        {
            WindowCase window = new(channel, windows[trial].Windows[index], false, input.Criteria, answers.OwnOf(index).Contains(trial) ? answers.In(index, trial) : null);
            WindowCase? before = baselines[trial] is { } readings
                ? new WindowCase(channel, readings.Windows[index], false, input.Criteria)
                : null;
            cases.Add((window, rules.Judge(window)));
            cells.Add(policy.Cell(
                channel.Name,
                input.Trials[trial],
                window,
                cases[^1].Outcomes,
                before is null ? null : (before, rules.Judge(before)),
                BridgedTrials.Of(index, own, trial, input.Trials[trial], windows[trial], survey),
                bridgeOpen,
                throughout));
            cells[trial] = Holding(cells[trial], inTrials);
        }

        ChannelResult result = policy.Channel(whole, rules.Judge(whole), cells.MoveToImmutable(), input.Trials, own, bridgeOpen, carried);
        return (result, ChannelInformation.Of(channel, [.. cases], whole, rules));
    }

    private static CellResult Holding(CellResult cell, Finding? finding) =>
        finding is null ? cell : cell with { Findings = [.. cell.Findings, finding with { Trial = cell.Trial }] };
}
