using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Criteria;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Measures;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Tasks;

/// <summary>Whether another site answers a site's task: leads or labels exchanged.</summary>
/// <remarks>
/// Medians over the trials of the task: the asked site stays at its rest and another one rises. Both ways round, each answering the other's
/// task, it can be relied on; one way round another movement may have been made. Strong contractions reach the neighbour through tissue: there the
/// asked site rises too, and that the other one leads counts, but only both ways round, since one movement may well move two muscles.
/// </remarks>
public static class LeadSwap
{
    /// <summary>The findings of a recording; each is carried by the channels that it names first.</summary>
    /// <param name="answers">The answers.</param>
    /// <param name="criterion">The limits of <c>lead-swap</c>.</param>
    /// <param name="durationS">Length of the recording: what is exchanged is so throughout.</param>
    public static ImmutableArray<Finding> Find(TaskAnswers answers, Criterion criterion, double durationS)
    {
        Strange?[] strangers = [.. Enumerable.Range(0, answers.Channels).Select(channel => StrangerOf(answers, channel, criterion))];
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
        for (int asked = 0; asked < strangers.Length; asked++)
        {
            if (strangers[asked] is { } stranger)
            {
                bool isMutual = strangers[stranger.Answering] is { } other && other.Answering == asked;
                if (!isMutual && stranger.OnlyLeads)
                {
                    continue;
                }

                findings.Add(FindingOf(answers, asked, stranger, isMutual, durationS));
            }
        }

        return findings.ToImmutable();
    }

    private static Strange? StrangerOf(TaskAnswers answers, int asked, Criterion criterion)
    {
        ImmutableArray<int> trials = answers.OwnOf(asked);
        (int Channel, double Snr)[] all =
        [
            .. Enumerable.Range(0, answers.Channels)
                .Select(channel => (channel, Snr: Median([.. trials.Select(trial => answers.In(channel, trial).Snr).OfType<double>()])))
                .Where(one => one.Snr is not null)
                .Select(one => (one.channel, one.Snr!.Value)),
        ];
        if (trials.IsEmpty || !all.Any(one => one.Channel == asked) || all.Length < 2)
        {
            return null;
        }

        double own = all.First(one => one.Channel == asked).Snr;
        (int answering, double snr) = all.Where(one => one.Channel != asked).MaxBy(one => one.Snr);
        double? ValueOf(string measure) => measure switch { "swap_own" => own, "swap_other" => snr, "swap_lead" => snr - own, _ => null };
        LimitJudgement judged = LimitJudgement.Of(criterion.Questionable, criterion.Reject, ValueOf);
        bool onlyLeads = judged.Evidence.Any(one => string.Equals(one.Measure, "swap_lead", StringComparison.Ordinal));
        return judged.Evidence.IsEmpty ? null : new Strange(answering, own, snr, judged.Evidence, onlyLeads);
    }

    private static double? Median(double[] values) => values.Length == 0 ? null : Quantiles.MedianInPlace(values);

    private static Finding FindingOf(TaskAnswers answers, int asked, Strange stranger, bool isMutual, double durationS)
    {
        string name = answers.NameOf(asked);
        string other = answers.NameOf(stranger.Answering);
        return new Finding
        {
            Reason = ReasonCode.LeadSwap,
            Grade = isMutual ? Grade.Reject : Grade.Questionable,
            Channels = [name, other],
            FromS = 0,
            ToS = durationS,
            Evidence = stranger.Evidence,
            Effect = new ScoreEffect(null, null, null, "the score may be that of another muscle"),
            Text = string.Create(CultureInfo.InvariantCulture, $"{other} answers the task of {name} ({stranger.Snr:0} dB above rest), {name} {(stranger.OnlyLeads ? "less" : "does not")} ({stranger.Own:0} dB)"),
            Cause = isMutual
                ? "leads or labels of the two sites are exchanged: each answers the other's task"
                : "leads or labels are exchanged, or another movement was made than asked for",
        };
    }

    private sealed record Strange(int Answering, double Own, double Snr, ImmutableArray<Evidence> Evidence, bool OnlyLeads);
}
