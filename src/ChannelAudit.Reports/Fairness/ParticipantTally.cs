using System.Runtime.InteropServices;

namespace ChannelAudit.Reports.Fairness;

/// <summary>What is kept of a participant: exclusions by channel and condition.</summary>
internal sealed class ParticipantTally
{
    private readonly Dictionary<(string Channel, string Condition), ExcludedCount> _trials = [];
    private readonly Dictionary<string, ExcludedCount> _channels = new(StringComparer.Ordinal);

    /// <summary>The groups that its recordings name.</summary>
    public SortedSet<string> Groups { get; } = new(StringComparer.Ordinal);

    /// <summary>Names of its channels.</summary>
    public IEnumerable<string> ChannelNames => _channels.Keys;

    /// <summary>Labels of its scored trials; the empty text stands for none.</summary>
    public IEnumerable<string> Conditions => _trials.Keys.Select(key => key.Condition).Distinct(StringComparer.Ordinal);

    /// <summary>Counts a scored trial of a channel.</summary>
    public void AddTrial(string channel, string condition, bool isExcluded) =>
        CollectionsMarshal.GetValueRefOrAddDefault(_trials, (channel, condition), out _) += new ExcludedCount(isExcluded ? 1 : 0, 1);

    /// <summary>Counts a channel of a recording.</summary>
    public void AddChannel(string channel, bool isExcluded) =>
        CollectionsMarshal.GetValueRefOrAddDefault(_channels, channel, out _) += new ExcludedCount(isExcluded ? 1 : 0, 1);

    /// <summary>Its trials; null means all channels or all conditions.</summary>
    public ExcludedCount Trials(string? channel, string? condition) => ExcludedCount.Sum(_trials
        .Where(entry => (channel ?? entry.Key.Channel).Equals(entry.Key.Channel, StringComparison.Ordinal)
            && (condition ?? entry.Key.Condition).Equals(entry.Key.Condition, StringComparison.Ordinal))
        .Select(entry => entry.Value));

    /// <summary>Its channels; null means all of them.</summary>
    public ExcludedCount Channels(string? channel) =>
        channel is null ? ExcludedCount.Sum(_channels.Values) : _channels.GetValueOrDefault(channel);
}
