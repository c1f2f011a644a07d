using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Criteria;

/// <summary>The limits that hold when nobody changes them: all of them, in this one place.</summary>
/// <remarks>
/// Limits that no page or paper gives are engineering judgement and say so; <c>docs/criteria.md</c> tells what each was
/// judged by. A changed default changes results and belongs into the changelog as such.
/// </remarks>
public static class DefaultCriteria
{
    /// <summary>The code of the rule on a channel's share of bad trials.</summary>
    public const string BadTrials = "bad-trials";

    /// <summary>The defaults.</summary>
    public static AuditCriteria All { get; } = Build();

    private static AuditCriteria Build()
    {
        ImmutableArray<Criterion> all =
            [
                Bridge(), Dropout(), Flatline(), Clipping(), Line(), Narrow(), LowFrequency(), Pops(), NoiseFloor(), Drift(),
                WeakResponse(), LeadSwap(), Share(),
            ];
        return new AuditCriteria { All = all, Sha256 = CriteriaText.Hash(all) };
    }

    // The last reject alternative is asked only where there are neither contractions nor a high band: that is part of the rule.
    private static Criterion Bridge() => new()
    {
        Reason = ReasonCode.Bridge,
        Questionable = [Set(("rho_high_rest", 0.12)), Set(("rho_active", 0.90), ("gain_active", 0.30)), Set(("rho_active", 0.75), ("gain_active", 0.40))],
        Reject =
        [
            Set(("rho_rest", 0.60), ("rho_high_rest", 0.40)),
            Set(("rho_active", 0.90), ("gain_active", 0.50)),
            Set(("rho_rest", 0.90)),
        ],
        Source = "engineering judgement, tuned on simulated electrodes; gains from a resistor model of two joined sites",
    };

    // Any gap at all: the shortest one is a sample, and no rate in use makes that shorter than a microsecond.
    private static Criterion Dropout() => new()
    {
        Reason = ReasonCode.Dropout,
        Questionable = [Set(("gap", 0.001))],
        Reject = [Set(("gap", 50)), Set(("missing", 5))],
        ChannelReject = [Set(("missing", 5))],
        Source = "engineering judgement: any gap is questionable",
    };

    private static Criterion Flatline() => new()
    {
        Reason = ReasonCode.Flatline,
        Questionable = [Set(("flat_run", 25))],
        Reject = [Set(("flat_run", 200))],
        ChannelReject = [Set(("flat", 5))],
        Source = "engineering judgement: 25 ms is the shortest run that counts as flat",
    };

    private static Criterion Clipping() => new()
    {
        Reason = ReasonCode.Clipping,
        Questionable = [Set(("clipped", 0.01))],
        Reject = [Set(("clipped", 1)), Set(("clipped_run", 10))],
        ChannelQuestionable = [Set(("clipped", 0.01))],
        ChannelReject = [Set(("clipped", 1))],
        Source = "engineering judgement: one clipped sample in 10 000 is questionable; 1 % lowers a Gaussian's rms by 0.9 %",
    };

    private static Criterion Line() => OnBothLevels(
        ReasonCode.LineNoise, [Set(("line_rms", 1), ("line_ratio", -10))], [Set(("line_rms", 5), ("line_ratio", 0))], "engineering judgement");

    private static Criterion Narrow() => OnBothLevels(
        ReasonCode.NarrowBand,
        [Set(("narrow_rms", 1), ("narrow_ratio", -10))],
        [Set(("narrow_rms", 5), ("narrow_ratio", 0))],
        "engineering judgement: as for line-noise");

    // Asked of trials only: blinks and movements between the trials make every hour look moved.
    private static Criterion LowFrequency() => new()
    {
        Reason = ReasonCode.LowFrequency,
        Questionable = [Set(("lowfreq_rms", 10), ("lowfreq_ratio", 1))],
        Reject = [Set(("lowfreq_rms", 50), ("lowfreq_ratio", 10))],
        Source = "engineering judgement: below the 20 Hz at which scoring usually starts (De Luca et al. 2010)",
    };

    // Asked of trials only: what happens between them is not scored.
    private static Criterion Pops() => new()
    {
        Reason = ReasonCode.Pops,
        Questionable = [Set(("pops", 1))],
        Reject = [Set(("pop_share", 50)), Set(("pops", 3), ("pop_rate", 30))],
        Source = "engineering judgement: one in a trial is worth a look; a rate needs three events at least",
    };

    private static Criterion NoiseFloor() => OnBothLevels(
        ReasonCode.NoiseFloor,
        [Set(("rest_rms", 3), ("whiteness", 0.5))],
        [Set(("rest_rms", 10), ("whiteness", 0.5))],
        "engineering judgement: for the face; a muscle has a whiteness of at most 0.43, noise alone 0.95 and more (simulated)");

    // The range is asked of trials only: over an hour every baseline wanders further.
    private static Criterion Drift() => new()
    {
        Reason = ReasonCode.Drift,
        Questionable = [Set(("drift_range", 200)), Set(("drift_slope", 600)), Set(("headroom", 50))],
        Reject = [Set(("drift_slope", 6000)), Set(("headroom", 20))],
        ChannelQuestionable = [Set(("drift_slope", 600)), Set(("headroom", 50))],
        ChannelReject = [Set(("drift_slope", 6000)), Set(("headroom", 20))],
        Source = "engineering judgement: 600 uV/min is 10 uV/s",
    };

    private static Criterion WeakResponse() => OnBothLevels(
        ReasonCode.WeakResponse,
        [Set(("contraction_snr", 12)), Set(("whiteness", 0.7), ("rest_excess", 1.3), ("band_p95", 3))],
        [Set(("contraction_snr", 6))],
        "engineering judgement: 12 dB is four times the power of rest, 6 dB is twice its amplitude, instructed contractions only; joined inputs leave the amplifier's own noise");

    // Both ways round it is a reject: that is part of the rule.
    private static Criterion LeadSwap() => new()
    {
        Reason = ReasonCode.LeadSwap,
        Questionable = [Set(("swap_own", 6), ("swap_other", 12)), Set(("swap_other", 12), ("swap_lead", 6))],
        Source = "engineering judgement: an answer that does not count at the asked site, and one that does at another",
    };

    private static Criterion Share() => new()
    {
        Reason = BadTrials,
        ChannelQuestionable = [Set(("bad_share_low", 10))],
        ChannelReject = [Set(("bad_share", 50))],
        Source = "engineering judgement; asked from 8 trials on; interval after Wilson (1927)",
    };

    private static Criterion OnBothLevels(
        string reason, ImmutableArray<LimitSet> questionable, ImmutableArray<LimitSet> reject, string source) => new()
        {
            Reason = reason,
            Questionable = questionable,
            Reject = reject,
            ChannelQuestionable = questionable,
            ChannelReject = reject,
            Source = source,
        };

    private static LimitSet Set(params ReadOnlySpan<(string Measure, double Value)> limits)
    {
        ImmutableArray<Limit>.Builder set = ImmutableArray.CreateBuilder<Limit>(limits.Length);
        foreach ((string measure, double value) in limits)
        {
            set.Add(new Limit(measure, value));
        }

        return new LimitSet(set.MoveToImmutable());
    }
}
