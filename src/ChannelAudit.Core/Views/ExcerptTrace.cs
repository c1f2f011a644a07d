using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Survey;

namespace ChannelAudit.Views;

/// <summary>Reads a part of a channel for a picture.</summary>
public static class ExcerptTrace
{
    /// <summary>The trace between two times, kept inside the recording.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">One of its channels.</param>
    /// <param name="fromS">Start in seconds.</param>
    /// <param name="toS">End in seconds, later.</param>
    /// <param name="columns">Columns wanted; there are no more than samples.</param>
    /// <param name="cancellation">Checked for every block.</param>
    public static Trace Of(Recording recording, Channel channel, double fromS, double toS, int columns, CancellationToken cancellation)
    {
        double rate = channel.Rate.Value;
        long start = Math.Clamp((long)Math.Round(fromS * rate), 0, Math.Max(0, channel.TimelineLength - 1));
        long end = Math.Clamp((long)Math.Round(toS * rate), start + 1, Math.Max(start + 1, channel.TimelineLength));
        TraceBuilder trace = new(start, end, columns);
        foreach (SampleBlock block in SampleBlocks.Of(recording, channel, Window.Of(channel.Stretches, start, end).Pieces, cancellation))
        {
            trace.Add(block.Samples.Span, block.Start);
        }

        return trace.Finish(rate);
    }
}
