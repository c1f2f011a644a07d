using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Survey;

namespace ChannelAudit.Findings.Rules;

/// <summary>All rules about windows of one channel.</summary>
internal sealed class ChannelRules
{
    private readonly LineNoiseRule lineNoise;
    private readonly NarrowBandRule narrowBand;
    private readonly NoiseFloorRule noiseFloor;

    public ChannelRules(ChannelSurvey channel, AuditCriteria criteria)
    {
        lineNoise = new LineNoiseRule(channel, criteria);
        narrowBand = new NarrowBandRule(channel, criteria);
        noiseFloor = new NoiseFloorRule(channel, criteria);
    }

    /// <summary>Whether the muscle is active at rest.</summary>
    public bool IsTonic(WindowCase whole) => noiseFloor.IsTonic(whole);

    /// <summary>What every rule says of a window.</summary>
    public ImmutableArray<RuleOutcome> Judge(WindowCase window) =>
    [
        lineNoise.Judge(window),
        narrowBand.Judge(window),
        ClippingRule.Judge(window),
        FlatlineRule.Judge(window),
        DropoutRule.Judge(window),
        LowFrequencyRule.Judge(window),
        PopsRule.Judge(window),
        noiseFloor.Judge(window),
        DriftRule.Judge(window),
        WeakResponseRule.Judge(window),
        CollapseRule.Judge(window),
        UnusableInputRule.Judge(window),
    ];
}
