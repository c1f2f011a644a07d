using System.Collections.Immutable;
using ChannelAudit.Events;

namespace ChannelAudit.Segments;

/// <summary>Cuts a recording without events into blocks of 10 s.</summary>
internal static class Blocks
{
    private const decimal BlockS = 10;

    // Pair values need 2 s: a shorter remainder could carry none.
    private const decimal LeastRemainderS = 2;

    /// <summary>Blocks of 10 s from the first sample; a remainder of 2 s or more is a block of its own, a shorter one lengthens the last block.</summary>
    /// <param name="durationS">Length of the recording, gaps included, in s.</param>
    /// <returns>Events without label; one as long as the recording when that is shorter than 12 s; none for an empty recording.</returns>
    public static ImmutableArray<RecordedEvent> Of(double durationS)
    {
        // To the microsecond: sample indices are unchanged below 500 kHz, and no long fraction reaches a table.
        decimal total = decimal.Round((decimal)durationS, 6);
        ImmutableArray<RecordedEvent>.Builder blocks = ImmutableArray.CreateBuilder<RecordedEvent>();
        decimal start = 0;
        while (total - start > 0)
        {
            decimal left = total - start;
            decimal length = left < BlockS + LeastRemainderS ? left : BlockS;
            blocks.Add(new RecordedEvent(start, length, null));
            start += length;
        }

        return blocks.ToImmutable();
    }
}
