using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Measures;
using ChannelAudit.Segments;
using ChannelAudit.Survey;

namespace ChannelAudit.Results;

/// <summary>Collects the rows of one pair.</summary>
internal static class PairRows
{
    /// <summary>Every trial of 2 s and more, then the whole recording, rest, and the contractions of each.</summary>
    public static PairResult Of(
        int index,
        RecordingSurvey survey,
        ImmutableArray<Trial> trials,
        ImmutableArray<TrialReadings> windows,
        ImmutableArray<PairStateRows> states,
        PairJudgement judgement)
    {
        PairSurvey pair = survey.Pairs[index];
        ImmutableArray<PairRow>.Builder rows = ImmutableArray.CreateBuilder<PairRow>();
        for (int i = 0; i < trials.Length; i++)
        {
            if ((double)(trials[i].WindowToS - trials[i].WindowFromS) >= TrialPass.LeastPairSeconds)
            {
                string number = trials[i].Number.ToString(CultureInfo.InvariantCulture);
                rows.Add(Row(number, windows[i].Pairs[index], pair, "no unbroken stretch of 1 s"));
            }
        }

        rows.Add(Row("all", pair.All, pair, "no unbroken stretch of 1 s"));
        rows.Add(Row("rest", states[index].Rest, pair, "no second with both channels quiet"));
        rows.Add(Row("active_a", states[index].ActiveA, pair, "no contraction of the first channel"));
        rows.Add(Row("active_b", states[index].ActiveB, pair, "no contraction of the second channel"));
        return new PairResult
        {
            ChannelA = survey.Channels[pair.A].Name,
            ChannelB = survey.Channels[pair.B].Name,
            Rows = rows.DrainToImmutable(),
            Evidence = judgement.Evidence,
        };
    }

    private static PairRow Row(string trial, PairReading? reading, PairSurvey pair, string missing) => reading is { } own
        ? new PairRow(
            trial,
            own.Rho,
            own.RhoHigh,
            own.Distance,
            own.Coherence,
            own.GainAb,
            own.GainBa,
            own.RhoHigh is null ? "the band 300 to 450 Hz is not there" : null)
        : new PairRow(trial, null, null, null, null, null, null, pair.NotComparable ?? missing);
}
