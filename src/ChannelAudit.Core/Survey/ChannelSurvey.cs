using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Setup;

namespace ChannelAudit.Survey;

/// <summary>What the whole of one channel shows; trials are judged against it.</summary>
public sealed record ChannelSurvey
{
    /// <summary>The channel.</summary>
    public required Channel Channel { get; init; }

    /// <summary>The site's name, or the label.</summary>
    public required string Name { get; init; }

    /// <summary>Band, bins and line windows.</summary>
    public required SpectralFrame Frame { get; init; }

    /// <summary>Rails and flat limits.</summary>
    public required TimeSurvey Time { get; init; }

    /// <summary>Where samples are at a rail, nearby runs joined.</summary>
    public required SampleRanges Clipped { get; init; }

    /// <summary>Where the channel is flat.</summary>
    public required SampleRanges Flat { get; init; }

    /// <summary>Its pops.</summary>
    public required ChannelPops Pops { get; init; }

    /// <summary>All one-second segments.</summary>
    public required SegmentTable Segments { get; init; }

    /// <summary>Which of them are quiet.</summary>
    public required QuietSegments Quiet { get; init; }

    /// <summary>The reading of the whole recording.</summary>
    public required WindowReading All { get; init; }

    /// <summary>Whether the file claims or shows a high-pass that hides drift.</summary>
    public required string? DriftHidden { get; init; }

    /// <summary>Why motion cannot be ruled out, or null: a high-pass that the file claims or shows.</summary>
    public required string? MotionHidden { get; init; }

    /// <summary>Whether the channel lies at the eye or the brow, where blinks are to be expected.</summary>
    public required bool IsNearEye { get; init; }

    /// <summary>Where the spectrum contradicts what the file says of its filters, in words.</summary>
    public ImmutableArray<string> FilterDoubts { get; init; } = [];

    /// <summary>What it is compared by with other recordings.</summary>
    public ChannelSignal? Signal { get; init; }

    /// <summary>The site of the setup, or null.</summary>
    public SiteSetup? Site { get; init; }
}
