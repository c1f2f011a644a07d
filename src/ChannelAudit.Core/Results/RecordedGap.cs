using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Results;

/// <summary>Time inside a recording of which no audited channel has a single sample: a pause, or samples lost by all.</summary>
/// <param name="FromS">Start in seconds from the first stored sample.</param>
/// <param name="ToS">End.</param>
public readonly record struct RecordedGap(double FromS, double ToS)
{
    /// <summary>The gaps of a recording in order.</summary>
    /// <param name="channels">Its audited channels.</param>
    public static ImmutableArray<RecordedGap> Of(IEnumerable<Channel> channels)
    {
        ImmutableArray<RecordedGap>.Builder gaps = ImmutableArray.CreateBuilder<RecordedGap>();
        double storedTo = 0;
        IEnumerable<(double FromS, double ToS)> stored = channels
            .SelectMany(channel => channel.Stretches.Select(stretch => (FromS: stretch.Start / channel.Rate.Value, ToS: stretch.End / channel.Rate.Value)))
            .OrderBy(stretch => stretch.FromS);
        foreach ((double fromS, double toS) in stored)
        {
            if (fromS > storedTo)
            {
                gaps.Add(new RecordedGap(storedTo, fromS));
            }

            storedTo = Math.Max(storedTo, toS);
        }

        return gaps.DrainToImmutable();
    }
}
