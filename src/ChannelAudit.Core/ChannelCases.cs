using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Survey;

namespace ChannelAudit;

/// <summary>One channel as the rules are asked about it: the whole recording, and each trial with its baseline.</summary>
/// <param name="Channel">The channel.</param>
/// <param name="Whole">The whole recording.</param>
/// <param name="Windows">The trials' windows.</param>
/// <param name="Baselines">The trials' baselines; null where none was asked for.</param>
internal sealed record ChannelCases(
    ChannelSurvey Channel, WindowCase Whole, ImmutableArray<WindowCase> Windows, ImmutableArray<WindowCase?> Baselines)
{
    /// <summary>The cases of a channel, before the limits that came with the input.</summary>
    /// <param name="index">Position of the channel.</param>
    /// <param name="readings">What was read.</param>
    public static ChannelCases Of(int index, AuditReadings readings)
    {
        ChannelSurvey channel = readings.Survey.Channels[index];
        AuditCriteria criteria = readings.Asked(readings.Input.Criteria);
        ImmutableArray<int> own = readings.Answers.OwnOf(index);
        return new ChannelCases(
            channel,
            new WindowCase(channel, channel.All, true, criteria, readings.Answers.Best(index)),
            [
                .. readings.Windows.Select((window, trial) =>
                    new WindowCase(channel, window.Windows[index], false, criteria, own.Contains(trial) ? readings.Answers.In(index, trial) : null)),
            ],
            [.. readings.Baselines.Select(baseline => baseline is null ? null : new WindowCase(channel, baseline.Windows[index], false, criteria))]);
    }

    /// <summary>The same before other limits; nothing is measured anew.</summary>
    public ChannelCases Before(AuditCriteria criteria) =>
        new(Channel, Whole.Before(criteria), [.. Windows.Select(window => window.Before(criteria))], [.. Baselines.Select(window => window?.Before(criteria))]);
}
