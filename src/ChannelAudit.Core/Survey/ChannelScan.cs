using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;

namespace ChannelAudit.Survey;

/// <summary>What all samples of a channel show, one by one.</summary>
/// <param name="Time">Rails, and what must be known before any window is looked at.</param>
/// <param name="Whole">The scan of the whole channel.</param>
/// <param name="Clipped">Where samples are at a rail.</param>
/// <param name="Flat">Flat stretches.</param>
internal sealed record ChannelScan(TimeSurvey Time, TimeScan Whole, SampleRanges Clipped, SampleRanges Flat)
{
    private const double JoinClippedSeconds = 0.1;

    /// <summary>Scans the channels of a group, going through the file twice: once for rails and limits, once for what lies beyond them.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channels">The channels.</param>
    /// <param name="cancellation">Checked for every block.</param>
    public static ImmutableArray<ChannelScan> Of(Recording recording, ImmutableArray<Channel> channels, CancellationToken cancellation)
    {
        Spill spill = new();
        TimeSurveyor[] surveyors = [.. channels.Select(channel => new TimeSurveyor(channel, spill))];
        SampleBlocks.VisitTogether(recording, channels, i => TimeSurveyor.CarryOf(channels[i]), (i, block) => surveyors[i].Add(block), cancellation);
        TimeSurvey[] times = [.. surveyors.Select(surveyor => surveyor.Finish())];

        SampleRanges[] clipped = [.. channels.Select(channel => new SampleRanges((long)(JoinClippedSeconds * channel.Rate.Value)))];
        SampleRanges[] flat = [.. channels.Select(_ => new SampleRanges())];
        TimeScanner[] scanners =
        [
            .. channels.Select((channel, i) => new TimeScanner(channel, times[i], ChannelSurveyor.HistogramOf(channel, times[i]), clipped[i], flat[i])),
        ];
        SampleBlocks.VisitTogether(
            recording, channels, i => TimeScanner.CarryOf(times[i]), (i, block) => scanners[i].Add(block), cancellation);
        return [.. channels.Select((_, i) => new ChannelScan(times[i], scanners[i].Finish(), clipped[i], flat[i]))];
    }
}
