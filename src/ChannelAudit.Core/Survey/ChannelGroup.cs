using System.Collections.Immutable;
using ChannelAudit.Recordings;

namespace ChannelAudit.Survey;

/// <summary>Channels whose segments start at the same samples: one rate, the same unbroken stretches. They are transformed together.</summary>
/// <param name="Members">Positions in the list of audited channels, ascending.</param>
public sealed record ChannelGroup(ImmutableArray<int> Members)
{
    /// <summary>Groups channels in the order of their first member.</summary>
    public static ImmutableArray<ChannelGroup> Of(ImmutableArray<Channel> channels)
    {
        List<List<int>> groups = [];
        for (int i = 0; i < channels.Length; i++)
        {
            List<int>? group = groups.Find(other => AreAlike(channels[other[0]], channels[i]));
            if (group is null)
            {
                groups.Add([i]);
            }
            else
            {
                group.Add(i);
            }
        }

        return [.. groups.Select(group => new ChannelGroup([.. group]))];
    }

    private static bool AreAlike(Channel a, Channel b) =>
        a.Rate == b.Rate && a.Stretches.AsSpan().SequenceEqual(b.Stretches.AsSpan());
}
