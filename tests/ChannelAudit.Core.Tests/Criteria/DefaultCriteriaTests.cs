using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Core.Tests.Criteria;

public sealed class DefaultCriteriaTests
{
    // The limits as they were decided on, written down a second time: a changed default must be changed here too, on purpose.
    // Source of every row: engineering judgement, put down in docs/criteria.md; where a number follows from something, it says so:
    //   bridge       0.12 and 0.60/0.40 from simulated electrodes; gains from the resistor model Z/(3Z+2R) and Z/(Z+R): one bridge
    //                gives at most 1/3, two give 1/2 at R = Z
    //   dropout      any gap: 0.001 ms is shorter than a sample at any rate
    //   clipping     1 % clipped lowers the rms of Gaussian noise by 0.91 % (calculated)
    //   drift        600 uV/min = 10 uV/s, 6000 uV/min = 100 uV/s
    //   bad-trials   Wilson's interval (J. Am. Stat. Assoc. 22:209, 1927)
    private static readonly (string Reason, string Level, string Limits)[] Decided =
    [
        ("bridge", "questionable", "rho_high_rest 0.12 | rho_active 0.9 & gain_active 0.3 | rho_active 0.75 & gain_active 0.4"),
        ("bridge", "reject", "rho_rest 0.6 & rho_high_rest 0.4 | rho_active 0.9 & gain_active 0.5 | rho_rest 0.9"),
        ("bridge", "channel_questionable", ""),
        ("bridge", "channel_reject", ""),
        ("dropout", "questionable", "gap 0.001"),
        ("dropout", "reject", "gap 50 | missing 5"),
        ("dropout", "channel_questionable", ""),
        ("dropout", "channel_reject", "missing 5"),
        ("flatline", "questionable", "flat_run 25"),
        ("flatline", "reject", "flat_run 200"),
        ("flatline", "channel_questionable", ""),
        ("flatline", "channel_reject", "flat 5"),
        ("clipping", "questionable", "clipped 0.01"),
        ("clipping", "reject", "clipped 1 | clipped_run 10"),
        ("clipping", "channel_questionable", "clipped 0.01"),
        ("clipping", "channel_reject", "clipped 1"),
        ("line-noise", "questionable", "line_rms 1 & line_ratio -10"),
        ("line-noise", "reject", "line_rms 5 & line_ratio 0"),
        ("line-noise", "channel_questionable", "line_rms 1 & line_ratio -10"),
        ("line-noise", "channel_reject", "line_rms 5 & line_ratio 0"),
        ("narrow-band", "questionable", "narrow_rms 1 & narrow_ratio -10"),
        ("narrow-band", "reject", "narrow_rms 5 & narrow_ratio 0"),
        ("narrow-band", "channel_questionable", "narrow_rms 1 & narrow_ratio -10"),
        ("narrow-band", "channel_reject", "narrow_rms 5 & narrow_ratio 0"),
        ("low-frequency", "questionable", "lowfreq_rms 10 & lowfreq_ratio 1"),
        ("low-frequency", "reject", "lowfreq_rms 50 & lowfreq_ratio 10"),
        ("low-frequency", "channel_questionable", ""),
        ("low-frequency", "channel_reject", ""),
        ("pops", "questionable", "pops 1"),
        ("pops", "reject", "pop_share 50 | pops 3 & pop_rate 30"),
        ("pops", "channel_questionable", ""),
        ("pops", "channel_reject", ""),
        ("noise-floor", "questionable", "rest_rms 3 & whiteness 0.5"),
        ("noise-floor", "reject", "rest_rms 10 & whiteness 0.5"),
        ("noise-floor", "channel_questionable", "rest_rms 3 & whiteness 0.5"),
        ("noise-floor", "channel_reject", "rest_rms 10 & whiteness 0.5"),
        ("drift", "questionable", "drift_range 200 | drift_slope 600 | headroom 50"),
        ("drift", "reject", "drift_slope 6000 | headroom 20"),
        ("drift", "channel_questionable", "drift_slope 600 | headroom 50"),
        ("drift", "channel_reject", "drift_slope 6000 | headroom 20"),
        ("weak-response", "questionable", "contraction_snr 12 | whiteness 0.7 & rest_excess 1.3 & band_p95 3"),
        ("weak-response", "reject", "contraction_snr 6"),
        ("weak-response", "channel_questionable", "contraction_snr 12 | whiteness 0.7 & rest_excess 1.3 & band_p95 3"),
        ("weak-response", "channel_reject", "contraction_snr 6"),
        ("lead-swap", "questionable", "swap_own 6 & swap_other 12 | swap_other 12 & swap_lead 6"),
        ("lead-swap", "reject", ""),
        ("lead-swap", "channel_questionable", ""),
        ("lead-swap", "channel_reject", ""),
        ("bad-trials", "questionable", ""),
        ("bad-trials", "reject", ""),
        ("bad-trials", "channel_questionable", "bad_share_low 10"),
        ("bad-trials", "channel_reject", "bad_share 50"),
    ];

    [Fact]
    public void DefaultsAreTheLimitsThatWereDecidedOn()
    {
        string[] expected = [.. Decided.Select(row => $"{row.Reason} {row.Level}: {row.Limits}")];

        string[] actual = [.. DefaultCriteria.All.All.SelectMany(criterion => CriterionLevel.All.Select(
            level => $"{criterion.Reason} {level.Key}: {Words(level.Get(criterion))}"))];

        Assert.Equal(expected, actual);
    }

    [Fact]
    public void EveryLimitIsOneThatAFileMayHold()
    {
        foreach (Limit limit in AllLimits())
        {
            Assert.True(LimitRange.Contains(MeasureCatalog.Get(limit.Measure), limit.Value), limit.Measure);
        }
    }

    [Fact]
    public void NoDefaultIsInTheWrongOrder()
    {
        foreach (Criterion criterion in DefaultCriteria.All.All)
        {
            Assert.Null(LimitOrder.FirstFault(criterion.Questionable, criterion.Reject));
            Assert.Null(LimitOrder.FirstFault(criterion.ChannelQuestionable, criterion.ChannelReject));
        }
    }

    [Fact]
    public void EveryMeasureServesTheReasonItIsListedUnder()
    {
        foreach (Criterion criterion in DefaultCriteria.All.All)
        {
            foreach (Limit limit in CriterionLevel.All.SelectMany(level => level.Get(criterion)).SelectMany(set => set.Limits))
            {
                Assert.True(MeasureCatalog.Get(limit.Measure).Serves(criterion.Reason), limit.Measure);
            }
        }
    }

    [Fact]
    public void EveryLimitHasASource() => Assert.All(DefaultCriteria.All.All, criterion => Assert.NotEmpty(criterion.Source));

    private static IEnumerable<Limit> AllLimits() => DefaultCriteria.All.All
        .SelectMany(criterion => CriterionLevel.All.SelectMany(level => level.Get(criterion))).SelectMany(set => set.Limits);

    private static string Words(ImmutableArray<LimitSet> sets) => string.Join(" | ", sets.Select(
        set => string.Join(" & ", set.Limits.Select(limit => FormattableString.Invariant($"{limit.Measure} {limit.Value}")))));
}
