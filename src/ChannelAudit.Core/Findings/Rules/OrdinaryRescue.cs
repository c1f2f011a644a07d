using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Says when an ordinary high-pass would rescue a trial whose setup states no filter: the same rule asked of what would be left.</summary>
internal sealed class OrdinaryRescue
{
    private readonly AuditCriteria criteria;
    private readonly Lazy<LineNoiseRule> lineNoise;
    private readonly Lazy<NarrowBandRule> narrowBand;

    /// <summary>Prepares the rules, which are made when something was found.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="raw">The limits of raw measures.</param>
    public OrdinaryRescue(ChannelSurvey channel, AuditCriteria raw)
    {
        criteria = ScoredCriteria.Of(raw, ScoringFilter.Ordinary);
        lineNoise = new Lazy<LineNoiseRule>(() => new LineNoiseRule(channel, criteria, true));
        narrowBand = new Lazy<NarrowBandRule>(() => new NarrowBandRule(channel, criteria, true));
    }

    /// <summary>What to add to a finding; empty when the filter would not help, unless something else than what was found stands in its way.</summary>
    /// <param name="window">The window.</param>
    /// <param name="outcome">What was found in it.</param>
    public string Words(WindowCase window, RuleOutcome outcome)
    {
        WindowCase behind = window.Before(criteria);
        RuleOutcome left = outcome.Reason switch
        {
            ReasonCode.LineNoise => lineNoise.Value.Judge(behind),
            ReasonCode.NarrowBand => narrowBand.Value.Judge(behind),
            ReasonCode.LowFrequency => LowFrequencyRule.Judge(behind),
            _ => DriftRule.Judge(behind),
        };
        Grade then = left.Grade;
        if (then >= outcome.Grade)
        {
            return window.IsWhole ? string.Empty : WhyNot(outcome, left);
        }

        if (window.IsWhole)
        {
            return Left(window, outcome.Reason);
        }

        // What it leaves of low frequencies is said already.
        string start = string.Equals(outcome.Reason, ReasonCode.LowFrequency, StringComparison.Ordinal)
            ? ": "
            : "; behind a high-pass at 20 Hz ";
        return $"{start}{Say.Then(then)} (highpass_hz = 20.0 under [scoring], if you score so)";
    }

    // A drift that a high-pass takes away can have used up the range all the same: of two trials that drift alike the filter then rescues one.
    private static string WhyNot(RuleOutcome outcome, RuleOutcome left)
    {
        bool isAnother = string.Equals(outcome.Reason, ReasonCode.Drift, StringComparison.Ordinal)
            && !left.Evidence.Any(one => outcome.Evidence.Any(other => string.Equals(other.Measure, one.Measure, StringComparison.Ordinal)));
        return isAnother ? $"; a high-pass at 20 Hz would not clear it: {left.Text}" : string.Empty;
    }

    // The mean of a recording promises nothing of its trials: only what is left is said, which low frequencies have said already.
    private static string Left(WindowCase whole, string reason)
    {
        string? measure = reason switch
        {
            ReasonCode.LineNoise => "line_left",
            ReasonCode.NarrowBand => "narrow_left",
            _ => null,
        };
        return measure is not null && whole.ValueOf(measure) is { } left
            ? $"; a high-pass at 20 Hz would leave {Say.Number(left)} µV"
            : string.Empty;
    }
}
