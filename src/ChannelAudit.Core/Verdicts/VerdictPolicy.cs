using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Verdicts;

/// <summary>The one policy that turns findings into verdicts; nothing else does, and no condition label is looked at.</summary>
/// <remarks>
/// Where not even the amplitude of the muscle can be measured (no samples, less than 0.2 s, sampled too slowly for the band), nothing that
/// matters to scoring was assessed: questionable, <c>unusable-input</c>, never a silent pass.
/// </remarks>
internal sealed class VerdictPolicy
{
    private readonly AuditCriteria criteria;
    private readonly MeasureLimits limits;

    public VerdictPolicy(AuditCriteria criteria)
    {
        this.criteria = criteria;
        limits = new MeasureLimits(criteria);
    }

    /// <summary>The verdict of one channel in one trial: the worst of its own findings and of the pairs' that cover it.</summary>
    /// <param name="channel">The channel's name.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="window">The scoring window.</param>
    /// <param name="outcomes">What the rules say of it.</param>
    /// <param name="baseline">The baseline and what the rules say of it, or null.</param>
    /// <param name="bridges">What joins the channel to others in this trial.</param>
    /// <param name="bridgeOpen">Why a bridge could not be judged, or null.</param>
    /// <param name="carried">Findings about several channels that hold throughout.</param>
    public CellResult Cell(
        string channel,
        Trial trial,
        WindowCase window,
        ImmutableArray<RuleOutcome> outcomes,
        (WindowCase Window, ImmutableArray<RuleOutcome> Outcomes)? baseline,
        ImmutableArray<Finding> bridges,
        string? bridgeOpen,
        ImmutableArray<Finding> carried)
    {
        List<Finding> findings = [.. Findings(channel, trial.Number, window, outcomes, false)];
        List<NotAssessed> open = [.. Open(outcomes)];
        if (baseline is { } before)
        {
            findings.AddRange(Findings(channel, trial.Number, before.Window, before.Outcomes, true));
        }

        if (bridgeOpen is not null)
        {
            open.Add(new NotAssessed(ReasonCode.Bridge, bridgeOpen));
        }

        findings.AddRange(bridges);
        List<(string Reason, Grade Grade)> reasons = [.. findings.Concat(carried).Select(finding => (finding.Reason, finding.Grade)), .. OfNothing(window)];
        if (window.Reading.EmgPower is null)
        {
            open.Add(new NotAssessed(ReasonCode.UnusableInput, window.Reading.NoSpectrum ?? "no EMG band"));
        }

        return new CellResult
        {
            Trial = trial.Number,
            Verdict = reasons.Select(reason => reason.Grade).DefaultIfEmpty(Grade.Pass).Max(),
            Reasons = ReasonOrder.Of(reasons),
            NotAssessed = ReasonOrder.Of(open),
            Measures = GradedMeasures.Of(window, outcomes, limits),
            BaselineMeasures = baseline is { } own ? GradedMeasures.Of(own.Window, own.Outcomes, limits) : [],
            Findings = [.. findings],
        };
    }

    /// <summary>The verdict of a channel: the worst of its whole-recording findings and of the share of bad trials.</summary>
    public ChannelResult Channel(
        WindowCase whole,
        ImmutableArray<RuleOutcome> outcomes,
        ImmutableArray<CellResult> cells,
        ImmutableArray<Trial> trials,
        ImmutableArray<PairJudgement> pairs,
        string? bridgeOpen,
        ImmutableArray<Finding> carried)
    {
        string name = whole.Channel.Name;
        List<Finding> findings = [.. Findings(name, null, whole, outcomes, false), .. carried];
        List<(string Reason, Grade Grade)> reasons = [.. findings.Select(finding => (finding.Reason, finding.Grade))];
        foreach (PairJudgement pair in pairs.Where(pair => pair.Finding is not null))
        {
            findings.Add(pair.Finding! with { Effect = ScoreEffects.OfBridge(name, pair.Finding!, pair.Deciding) });
            reasons.Add((ReasonCode.Bridge, pair.ChannelGrade));
        }

        (Grade share, ImmutableArray<Evidence> evidence, ImmutableArray<string> commonest) = BadTrialShare.Of(cells, criteria);
        if (share != Grade.Pass)
        {
            reasons.AddRange(commonest.Select(reason => (reason, share)));
            findings.Add(ShareFinding(whole, share, evidence, commonest, cells, trials));
        }

        List<NotAssessed> open = [.. Open(outcomes)];
        if (bridgeOpen is not null)
        {
            open.Add(new NotAssessed(ReasonCode.Bridge, bridgeOpen));
        }

        reasons.AddRange(OfNothing(whole));
        if (whole.Reading.EmgPower is null)
        {
            open.Add(new NotAssessed(ReasonCode.UnusableInput, whole.Reading.NoSpectrum ?? "no EMG band"));
        }

        return new ChannelResult
        {
            Name = name,
            Label = whole.Channel.Channel.Label,
            RateHz = whole.Channel.Frame.RateHz,
            BandFromHz = whole.Channel.Frame.Band.FromHz,
            BandToHz = whole.Channel.Frame.Band.ToHz,
            Signal = whole.Channel.Signal,
            Verdict = reasons.Select(reason => reason.Grade).Append(share).Max(),
            Reasons = ReasonOrder.Of(reasons),
            NotAssessed = ReasonOrder.Of(open),
            Measures = GradedMeasures.Of(whole, outcomes, limits),
            Findings = [.. findings],
            Cells = cells,
        };
    }

    /// <summary>The grades that decide a trial's verdict without its findings in words: for limits that are only tried.</summary>
    /// <param name="window">The scoring window.</param>
    /// <param name="outcomes">What the rules say of it.</param>
    /// <param name="baseline">What they say of the baseline; empty without one.</param>
    /// <param name="bridge">What joins the channel to others in this trial.</param>
    /// <param name="carried">Findings that hold throughout.</param>
    public static IEnumerable<(string Reason, Grade Grade)> CellGrades(
        WindowCase window, ImmutableArray<RuleOutcome> outcomes, ImmutableArray<RuleOutcome> baseline, Grade bridge, ImmutableArray<Finding> carried)
    {
        // Of hundreds of trials under several sets of limits nearly all are clear: only what is not is handed out.
        foreach (RuleOutcome outcome in outcomes)
        {
            if (outcome.Grade != Grade.Pass)
            {
                yield return (outcome.Reason, outcome.Grade);
            }
        }

        foreach (RuleOutcome outcome in baseline)
        {
            if (outcome.Grade != Grade.Pass)
            {
                yield return (outcome.Reason, outcome.Grade);
            }
        }

        if (bridge != Grade.Pass)
        {
            yield return (ReasonCode.Bridge, bridge);
        }

        foreach (Finding finding in carried)
        {
            yield return (finding.Reason, finding.Grade);
        }

        foreach ((string Reason, Grade Grade) nothing in OfNothing(window))
        {
            yield return nothing;
        }
    }

    /// <summary>The same of a channel, but for the share of bad trials.</summary>
    /// <param name="whole">The whole recording.</param>
    /// <param name="outcomes">What the rules say of it.</param>
    /// <param name="pairs">What was judged about the pairs it is in.</param>
    /// <param name="carried">Findings about several channels that hold throughout.</param>
    public static IEnumerable<(string Reason, Grade Grade)> ChannelGrades(
        WindowCase whole, ImmutableArray<RuleOutcome> outcomes, ImmutableArray<PairJudgement> pairs, ImmutableArray<Finding> carried) =>
        CellGrades(whole, outcomes, [], pairs.Where(pair => pair.Finding is not null).Select(pair => pair.ChannelGrade).DefaultIfEmpty(Grade.Pass).Max(), carried);

    // Where not even an amplitude can be measured nothing was assessed.
    private static IEnumerable<(string Reason, Grade Grade)> OfNothing(WindowCase window) =>
        window.Reading.EmgPower is null ? [(ReasonCode.UnusableInput, Grade.Questionable)] : [];

    private static IEnumerable<NotAssessed> Open(ImmutableArray<RuleOutcome> outcomes) => outcomes
        .Where(outcome => outcome.NotAssessed is not null)
        .Select(outcome => new NotAssessed(outcome.Reason, outcome.NotAssessed!));

    private static IEnumerable<Finding> Findings(
        string channel, int? trial, WindowCase window, ImmutableArray<RuleOutcome> outcomes, bool inBaseline) => outcomes
        .Where(outcome => outcome.Grade != Grade.Pass)
        .Select(outcome => new Finding
        {
            Reason = outcome.Reason,
            Grade = outcome.Grade,
            Channels = [channel],
            Trial = trial,
            InBaseline = inBaseline,
            FromQuietStretches = outcome.FromQuietStretches,
            FromS = outcome.Stretch?.FromS ?? window.Reading.FromS,
            ToS = outcome.Stretch?.ToS ?? window.Reading.ToS,
            Evidence = outcome.Evidence,
            Effect = ScoreEffects.Of(window, outcome),
            Text = (inBaseline ? "before the onset: " : string.Empty) + outcome.Text,
            Cause = outcome.Cause,
        });

    private static Finding ShareFinding(
        WindowCase whole,
        Grade share,
        ImmutableArray<Evidence> evidence,
        ImmutableArray<string> commonest,
        ImmutableArray<CellResult> cells,
        ImmutableArray<Trial> trials)
    {
        ImmutableArray<Trial> bad = [.. trials.Where((_, i) => share == Grade.Reject ? cells[i].Verdict == Grade.Reject : cells[i].Verdict != Grade.Pass)];
        return new Finding
        {
            Reason = commonest.IsEmpty ? ReasonCode.UnusableInput : commonest[0],
            Grade = share,
            Channels = [whole.Channel.Name],
            FromS = (double)bad.Min(trial => trial.WindowFromS),
            ToS = (double)bad.Max(trial => trial.WindowToS),
            Evidence = evidence,
            Text = BadTrialWords.Of(share, bad.Length, cells.Length, commonest),
            Cause = "what the single trials show",
        };
    }
}
