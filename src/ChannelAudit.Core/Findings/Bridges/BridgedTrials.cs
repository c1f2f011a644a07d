using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Segments;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Bridges;

/// <summary>What the bridges of a channel are in one trial: the finding that each brings, with what it does to this trial's score.</summary>
/// <remarks>
/// The other site hands on a share of its amplitude: the median gain from it in its own contractions, which is a property of the gel. What arrives is taken as
/// independent of this site's muscle, so that powers add. Where the other site was not seen to contract alone, the correlation in the trial says how much
/// power the two have in common at most.
/// </remarks>
internal static class BridgedTrials
{
    /// <summary>The findings of one channel in one trial, worst first.</summary>
    /// <param name="channel">Position of the channel.</param>
    /// <param name="pairs">What was judged about the pairs it is in.</param>
    /// <param name="trial">Position of the trial.</param>
    /// <param name="at">The trial itself.</param>
    /// <param name="readings">What was measured in it.</param>
    /// <param name="survey">All channels and pairs.</param>
    public static ImmutableArray<Finding> Of(
        int channel, ImmutableArray<PairJudgement> pairs, int trial, Trial at, TrialReadings readings, RecordingSurvey survey) =>
    [
        .. pairs.Where(pair => pair.Finding is not null && pair.Trials[trial] > Grade.Pass)
            .OrderByDescending(pair => pair.Trials[trial])
            .Select(pair => pair.Finding! with
            {
                Grade = pair.Trials[trial],
                Trial = at.Number,
                FromS = (double)at.WindowFromS,
                ToS = (double)at.WindowToS,
                Effect = Effect(channel, pair, readings, survey),
            }),
    ];

    /// <summary>The worst of them, without words.</summary>
    /// <param name="pairs">What was judged about the pairs the channel is in.</param>
    /// <param name="trial">Position of the trial.</param>
    public static Grade GradeOf(ImmutableArray<PairJudgement> pairs, int trial)
    {
        Grade worst = Grade.Pass;
        foreach (PairJudgement pair in pairs)
        {
            worst = pair.Finding is not null && pair.Trials[trial] > worst ? pair.Trials[trial] : worst;
        }

        return worst;
    }

    private static ScoreEffect Effect(int channel, PairJudgement pair, TrialReadings readings, RecordingSurvey survey)
    {
        int other = pair.A == channel ? pair.B : pair.A;
        string name = survey.Channels[other].Name;
        double? own = RectifiedOf(channel, readings, survey);
        double? others = RectifiedOf(other, readings, survey);
        double? gain = pair.A == channel ? pair.Deciding.GainBa : pair.Deciding.GainAb;
        double? rho = readings.Pairs[survey.IndexOfPair(pair.A, pair.B)]?.Rho;
        (double? share, string note) = (gain, own, others, rho) switch
        {
            ({ } handed, > 0 and { } here, { } there, _) => (Squared(handed * there / here), $"of {name}, by its contractions"),
            (null, _, _, { } common) => (Squared(common), $"shared with {name} in this trial, at most"),
            _ => ((double?)null, $"too little of {name} in this trial to say how much of it gets in"),
        };
        if (share is not { } part || ScoreShift.OfAddedPower(part, 1) is not { } percent)
        {
            return new ScoreEffect(null, null, null, note);
        }

        return own is { } mean
            ? new ScoreEffect(ScoreShift.Added(mean, percent), percent, ScoreShift.Without(mean, percent), note)
            : new ScoreEffect(null, percent, null, note);
    }

    private static double Squared(double value) => value * value;

    private static double? RectifiedOf(int channel, TrialReadings readings, RecordingSurvey survey) =>
        survey.Channels[channel].Channel.IsMicrovolts ? ScoreMeasures.RectifiedOf(readings.Windows[channel], survey.Channels[channel]) : null;
}
