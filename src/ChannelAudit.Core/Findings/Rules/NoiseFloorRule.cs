using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Broadband noise of contact or amplifier: the band is filled, and as white as no muscle is.</summary>
/// <remarks>
/// A trial with a muscle on top is not white; it takes what the white or quiet seconds around it say, unless its own top of the band is so
/// empty that there cannot be as much noise in it.
/// </remarks>
internal sealed class NoiseFloorRule
{
    // For what may speak, should a lab ask for the amplitude alone.
    private const double White = 0.5;
    private const double MostAtSpikes = 50;
    private const int LeastToLast = 3;

    private readonly ChannelSurvey channel;
    private readonly Criterion criterion;
    private readonly double white;
    private readonly SegmentGrades speaking;

    public NoiseFloorRule(ChannelSurvey channel, AuditCriteria criteria)
    {
        this.channel = channel;
        criterion = criteria.For(ReasonCode.NoiseFloor);
        white = LimitOf(criterion.Questionable, "whiteness") ?? LimitOf(criterion.Reject, "whiteness") ?? White;
        speaking = new SegmentGrades(
            channel,
            Speaking(),
            segment => new PeakReading(Whiteness.NoisePower(channel.Segments.Top[segment], channel.Frame.Band), 0, 0),
            segment => LimitJudgement.GradeOf(
                criterion.Questionable,
                criterion.Reject,
                new NoiseValues(channel, channel.Segments.BandPower[segment], channel.Segments.Top[segment], channel.Segments.Middle[segment])),
            _ => 0);
    }

    /// <summary>Judges a window.</summary>
    public RuleOutcome Judge(WindowCase window)
    {
        // One spike is as white as noise.
        if (window.Reading.Pops.SpikeSharePercent is >= MostAtSpikes)
        {
            return RuleOutcome.None(ReasonCode.NoiseFloor, "short spikes hold half of the energy and more");
        }

        // Nothing at all in the band: not white, and no noise either.
        if (window.Reading is { RestPower: 0, Segments: > 0 })
        {
            return RuleOutcome.None(ReasonCode.NoiseFloor);
        }

        if (window.ValueOf("whiteness") is not { } whiteness || window.ValueOf("rest_rms") is not { } rms)
        {
            return RuleOutcome.None(ReasonCode.NoiseFloor, window.NoteOf("rest_rms") ?? window.NoteOf("whiteness"));
        }

        LimitJudgement own = window.Judge(ReasonCode.NoiseFloor);
        bool hides = !window.IsWhole && whiteness < white;
        (Grade inherited, SideReading? speaks) = hides ? Inherited(window.Reading) : (Grade.Pass, null);
        if (inherited > own.Grade && speaks is { } side)
        {
            double limit = LimitOf(inherited == Grade.Reject ? criterion.Reject : criterion.Questionable, "rest_rms") ?? 0;
            return Found(
                inherited,
                [new Evidence("rest_rms", side.Rms, "uV", limit)],
                $"noise of {Say.Number(side.Rms)} µV in the stretches around it") with
            { FromQuietStretches = true, InheritedPower = PowerLeft(side, window.Reading) };
        }

        if (own.Grade != Grade.Pass && ComesAndGoes(own, window.Reading.SegmentPowers))
        {
            return Found(Grade.Questionable, own.Evidence, $"{Say.Number(rms)} µV in the band, as white as noise (whiteness {Say.Number(whiteness)}), in a part of it only");
        }

        return own.Grade == Grade.Pass
            ? RuleOutcome.None(ReasonCode.NoiseFloor, hides ? Unspoken(window) : null)
            : Found(own.Grade, own.Evidence, $"{Say.Number(rms)} µV in the band, as white as noise (whiteness {Say.Number(whiteness)})");
    }

    /// <summary>Whether a channel's rest is strong, and has the spectrum of a muscle: tension, no fault.</summary>
    public bool IsTonic(WindowCase whole) =>
        whole.ValueOf("whiteness") is { } whiteness && whiteness < white
        && whole.ValueOf("rest_rms") is { } rms && rms >= LimitOf(criterion.ChannelQuestionable, "rest_rms");

    private static double? LimitOf(ImmutableArray<LimitSet> sets, string measure) => sets
        .SelectMany(set => set.Limits)
        .FirstOrDefault(limit => string.Equals(limit.Measure, measure, StringComparison.Ordinal))?.Value;

    private static RuleOutcome Found(Grade grade, ImmutableArray<Evidence> evidence, string text) => new(
        ReasonCode.NoiseFloor,
        grade,
        evidence,
        text,
        "poor or drying contact, a loose lead or plug, or a noisy amplifier");

    // Noise lasts. What only some seconds of a trial hold can be a spike too broad or too low to be called one.
    // Limits on measures that a second does not have say nothing of when it came.
    private bool ComesAndGoes(LimitJudgement own, ImmutableArray<SegmentPower> segments) =>
        segments.Length >= LeastToLast
        && own.Evidence.All(one => one.Measure is "rest_rms" or "whiteness")
        && 2 * segments.Count(IsNoise) <= segments.Length;

    private bool IsNoise(SegmentPower segment) => LimitJudgement.GradeOf(
        criterion.Questionable, criterion.Reject, new NoiseValues(channel, segment.Band, segment.Top, segment.Middle)) != Grade.Pass;

    /// <summary>What the scoring filter leaves of the noise that the stretches show, and of all that the window has above the band.</summary>
    private double? PowerLeft(SideReading side, WindowReading reading) => reading is { Left: { } left, Density.Length: > 0 }
        ? Surviving.WhitePower(side.Rms * side.Rms / (channel.Frame.Band.ToHz - channel.Frame.Band.FromHz), reading.Density, channel.Frame, left.Total)
        : null;

    private ImmutableArray<int> Speaking()
    {
        ImmutableArray<int>.Builder found = ImmutableArray.CreateBuilder<int>(channel.Segments.Count);
        for (int segment = 0; segment < channel.Segments.Count; segment++)
        {
            if (MaySpeak(segment))
            {
                found.Add(segment);
            }
        }

        return found.DrainToImmutable();
    }

    private bool MaySpeak(int segment) => channel.Quiet.IsClean[segment]
        && (channel.Quiet.IsQuiet[segment] || WhitenessOf(segment) >= white);

    private double? WhitenessOf(int segment) => Whiteness.Of(channel.Segments.Top[segment], channel.Segments.Middle[segment], channel.Frame.Band);

    private (Grade Grade, SideReading? Speaks) Inherited(WindowReading reading) => Inheritance.Of(
        speaking.Before(reading.Window.Start),
        speaking.After(reading.Window.End),
        _ => Math.Sqrt(reading.NoisePower ?? double.PositiveInfinity));

    /// <summary>An active trial without a second before or behind it that could speak: the contraction may hide the noise.</summary>
    private string? Unspoken(WindowCase window) =>
        window.IsActive && speaking.Before(window.Reading.Window.Start) is null && speaking.After(window.Reading.Window.End) is null
            ? "the muscle is active and no quiet second lies before or after"
            : null;

    /// <summary>What one second holds, by the names of this rule's measures.</summary>
    private readonly record struct NoiseValues(ChannelSurvey Channel, double Band, double Top, double Middle) : IMeasured
    {
        public double? ValueOf(string measure) => measure switch
        {
            "rest_rms" => Math.Sqrt(Band),
            "whiteness" => Whiteness.Of(Top, Middle, Channel.Frame.Band),
            _ => null,
        };
    }
}
