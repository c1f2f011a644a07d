using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>All rules about windows of one channel.</summary>
internal sealed class ChannelRules
{
    private readonly LineNoiseRule lineNoise;
    private readonly NarrowBandRule narrowBand;
    private readonly NoiseFloorRule noiseFloor;
    private readonly OrdinaryRescue? rescue;

    /// <summary>Prepares to judge a channel.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="criteria">The limits in force: of surviving measures where a scoring filter is stated.</param>
    public ChannelRules(ChannelSurvey channel, AuditCriteria criteria)
        : this(channel, criteria, inWords: true)
    {
    }

    private ChannelRules(ChannelSurvey channel, AuditCriteria criteria, bool inWords)
    {
        bool behind = channel.Frame.Filter.IsStated;
        lineNoise = new LineNoiseRule(channel, criteria, behind) { SaysRescue = inWords };
        narrowBand = new NarrowBandRule(channel, criteria, behind);
        noiseFloor = new NoiseFloorRule(channel, criteria);
        rescue = behind || !inWords ? null : new OrdinaryRescue(channel, criteria);
    }

    /// <summary>Rules that give the same grades and do not say what a filter would rescue, which takes the most time.</summary>
    public static ChannelRules WithoutWords(ChannelSurvey channel, AuditCriteria criteria) => new(channel, criteria, inWords: false);

    /// <summary>Whether the muscle is active at rest.</summary>
    public bool IsTonic(WindowCase whole) => noiseFloor.IsTonic(whole);

    /// <summary>What every rule says of a window.</summary>
    public ImmutableArray<RuleOutcome> Judge(WindowCase window) =>
    [
        Said(window, lineNoise.Judge(window)),
        Said(window, narrowBand.Judge(window)),
        ClippingRule.Judge(window),
        FlatlineRule.Judge(window),
        DropoutRule.Judge(window),
        Said(window, LowFrequencyRule.Judge(window)),
        PopsRule.Judge(window),
        noiseFloor.Judge(window),
        Said(window, DriftRule.Judge(window)),
        WeakResponseRule.Judge(window),
        CollapseRule.Judge(window),
        UnusableInputRule.Judge(window),
    ];

    private RuleOutcome Said(WindowCase window, RuleOutcome outcome) => outcome.Grade == Grade.Pass || rescue is null
        ? outcome
        : outcome with { Text = outcome.Text + rescue.Words(window, outcome) };
}
