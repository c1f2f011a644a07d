using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Results;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Verdicts;

/// <summary>What many bad trials say of their channel; it never flows back to trials.</summary>
/// <remarks>
/// From 8 trials on: reject when half or more are rejected, questionable when the lower end of the 95 % Wilson interval of the share that
/// did not pass is above 10 %. With fewer trials no share means much: reject when every trial is, questionable when more than half did not pass.
/// </remarks>
internal static class BadTrialShare
{
    /// <summary>The pseudo reason code of the limits.</summary>
    public const string Reason = "bad-trials";

    /// <summary>The share of trials that are rejected, a measure in %.</summary>
    public const string Share = "bad_share";

    /// <summary>The lower end of that share's interval, a measure in %.</summary>
    public const string LowShare = "bad_share_low";

    private const int LeastTrials = 8;
    private const int MostNamed = 3;

    /// <summary>The grade, the evidence, and the commonest reasons of the bad trials.</summary>
    public static (Grade Grade, ImmutableArray<Evidence> Evidence, ImmutableArray<string> Reasons) Of(
        ImmutableArray<CellResult> cells, AuditCriteria criteria)
    {
        int rejected = cells.Count(cell => cell.Verdict == Grade.Reject);
        int doubted = cells.Count(cell => cell.Verdict != Grade.Pass);
        if (doubted == 0)
        {
            return (Grade.Pass, [], []);
        }

        LimitJudgement judged = Judge(rejected, doubted, cells.Length, criteria.For(Reason));
        return judged.Grade == Grade.Pass ? (Grade.Pass, [], []) : (judged.Grade, judged.Evidence, Commonest(cells, judged.Grade));
    }

    /// <summary>The grade alone.</summary>
    /// <param name="trials">The channel's trials by verdict.</param>
    /// <param name="criterion">The limits of <see cref="Reason"/>.</param>
    public static Grade GradeOf(GradeCounts trials, Criterion criterion) => trials.Pass == trials.Total
        ? Grade.Pass
        : Judge(trials.Reject, trials.Total - trials.Pass, trials.Total, criterion).Grade;

    private static LimitJudgement Judge(int rejected, int doubted, int trials, Criterion criterion) =>
        trials >= LeastTrials ? ByLimits(rejected, doubted, trials, criterion) : Few(rejected, doubted, trials);

    private static LimitJudgement ByLimits(int rejected, int doubted, int trials, Criterion criterion)
    {
        double low = 100 * WilsonInterval.Of(doubted, trials).Low;
        return LimitJudgement.Of(
            criterion.ChannelQuestionable,
            criterion.ChannelReject,
            measure => measure switch
            {
                Share => 100.0 * rejected / trials,
                LowShare => low,
                _ => null,
            });
    }

    private static LimitJudgement Few(int rejected, int doubted, int trials)
    {
        Grade grade = rejected == trials ? Grade.Reject : 2 * doubted > trials ? Grade.Questionable : Grade.Pass;
        double share = 100.0 * (grade == Grade.Reject ? rejected : doubted) / trials;
        return new LimitJudgement(grade, grade == Grade.Pass ? [] : [new Evidence(Share, share, "%", grade == Grade.Reject ? 100 : 50)]);
    }

    private static ImmutableArray<string> Commonest(ImmutableArray<CellResult> cells, Grade grade)
    {
        Dictionary<string, int> counts = new(StringComparer.Ordinal);
        foreach (string reason in cells.Where(cell => cell.Verdict >= grade).SelectMany(cell => cell.Reasons))
        {
            counts[reason] = counts.GetValueOrDefault(reason) + 1;
        }

        int most = counts.Count == 0 ? 0 : counts.Values.Max();
        return
        [
            .. counts
                .Where(pair => 4 * pair.Value >= most)
                .OrderByDescending(pair => pair.Value)
                .ThenBy(pair => ReasonCode.All.IndexOf(pair.Key))
                .Take(MostNamed)
                .Select(pair => pair.Key),
        ];
    }
}
