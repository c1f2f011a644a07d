using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Motion of leads and skin: power below the band, unless it looks like blinks at a site that sees them.</summary>
/// <remarks>
/// Engineering judgement: at the eye and the brow, low frequencies in at most half of a trial's segments (of three or more, from five on the odd
/// one given: a quarter of a second reaches three of five that overlap by half) that swing by less than 500 µV beside the muscle's own swing are taken for blinks and lid movements. They are counted as information.
/// </remarks>
internal static class LowFrequencyRule
{
    private const int LeastSegments = 3;
    private const double LidSwingUv = 500;

    private const int OddGivenFrom = 5;

    // From peak to peak a Gaussian of a few seconds reaches four times its rms on either side; taken from the quietest segment, which the swing itself reaches least.
    private const double MuscleSwing = 8;

    /// <summary>Judges a window.</summary>
    public static RuleOutcome Judge(WindowCase window)
    {
        string? open = window.NoteOf("lowfreq_rms") ?? (window.Channel.Frame.Filter.IsStated ? window.NoteOf("lowfreq_left") : null);
        LimitJudgement judged = window.Judge(ReasonCode.LowFrequency);
        if (judged.Grade == Grade.Pass)
        {
            return RuleOutcome.None(ReasonCode.LowFrequency, open);
        }

        ImmutableArray<SegmentPower> segments = window.Reading.SegmentPowers;
        int moved = segments.Count(segment => Moves(segment, window.Criteria.For(ReasonCode.LowFrequency)));
        if (window.Channel.IsNearEye
            && segments.Length >= LeastSegments && 2 * moved <= segments.Length + (segments.Length >= OddGivenFrom ? 1 : 0)
            && window.Reading.Time.Swing - (MuscleSwing * Math.Sqrt(segments.Min(segment => segment.Band))) < LidSwingUv)
        {
            return RuleOutcome.None(ReasonCode.LowFrequency, open) with { IsLidMovement = true };
        }

        return new RuleOutcome(
            ReasonCode.LowFrequency,
            judged.Grade,
            judged.Evidence,
            Words(window),
            GroundJoint.AddTo("a lead or the skin moves: loose fastening, pull at a cable, speech or a turn of the head", window.Channel),
            open);
    }

    /// <summary>Whether a second of the window, at a site that sees lids, moves as in a blink.</summary>
    public static bool MayHoldBlink(WindowCase window) => window.Channel.IsNearEye
        && window.Reading.SegmentPowers.Any(segment => Moves(segment, window.Criteria.For(ReasonCode.LowFrequency)));

    private static string Words(WindowCase window)
    {
        string raw = $"{Say.Number(window.ValueOf("lowfreq_rms") ?? 0)} µV from 2 to 15 Hz";
        string left = Say.Number(window.ValueOf("lowfreq_left") ?? 0);
        ScoringFilter filter = window.Channel.Frame.Filter;
        return filter.IsStated
            ? $"{raw} raw, {left} µV behind the scoring filter ({filter.InWords}), {Say.Number(window.ValueOf("lowfreq_left_ratio") ?? 0)} times the muscle's power there"
            : $"{raw}, {Say.Number(window.ValueOf("lowfreq_ratio") ?? 0)} times the muscle's power; a high-pass at 20 Hz would leave {left} µV";
    }

    /// <summary>Whether a segment exceeds the questionable limits on its own.</summary>
    private static bool Moves(SegmentPower segment, Criterion criterion) =>
        LimitJudgement.GradeOf(criterion.Questionable, [], new MotionValues(segment)) != Grade.Pass;

    /// <summary>What one second holds, by the names of this rule's measures.</summary>
    private readonly record struct MotionValues(SegmentPower Segment) : IMeasured
    {
        public double? ValueOf(string measure) => measure switch
        {
            "lowfreq_rms" => Math.Sqrt(Segment.Low),
            "lowfreq_ratio" => Segment.Band > 0 ? Segment.Low / Segment.Band : null,
            "lowfreq_left" => Math.Sqrt(Segment.LowLeft),
            "lowfreq_left_ratio" => Segment.BandLeft > 0 ? Segment.LowLeft / Segment.BandLeft : null,
            "lowfreq_effect" => ScoreShift.OfAddedPower(Segment.LowLeft, Segment.TotalLeft),
            "lowfreq_shift" => ScoreShift.Added(
                Math.Sqrt(2 / Math.PI * Segment.TotalLeft), ScoreShift.OfAddedPower(Segment.LowLeft, Segment.TotalLeft) ?? 0),
            _ => null,
        };
    }
}
