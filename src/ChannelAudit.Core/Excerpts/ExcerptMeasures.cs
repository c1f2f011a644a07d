using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Survey;

namespace ChannelAudit.Excerpts;

/// <summary>Measures a window from nothing but its own samples and a few facts of its channel.</summary>
/// <remarks>
/// Rails, flat stretches and spikes are found on a whole channel, the answer to a task on its rest: what rests on them cannot be measured so
/// (<see cref="IsOfWindowAlone"/>).
/// </remarks>
public static class ExcerptMeasures
{
    private static readonly string[] OfTheWhole =
    [
        "clipped", "clipped_run", "peak_use", "flat", "flat_run", "headroom", "level_trend", "pops", "pop_rate", "pop_share", "contraction_snr", "rest_excess", "band_p95",
        "pops_effect", "pops_shift", "clipped_effect", "clipped_shift", "flat_effect", "flat_shift",
    ];

    /// <summary>Whether a measure of a trial uses the samples of its window alone.</summary>
    public static bool IsOfWindowAlone(string measure) => !OfTheWhole.Contains(measure, StringComparer.Ordinal);

    /// <summary>The measures of a window that can be taken so, in catalog order.</summary>
    /// <param name="facts">What the channel's whole says.</param>
    /// <param name="excerpt">Samples that cover the window as far as there are any.</param>
    /// <param name="fromS">Start of the window, seconds from the recording's first stored sample.</param>
    /// <param name="toS">Its end.</param>
    /// <param name="cancellation">Checked often.</param>
    public static ImmutableArray<MeasureValue> Of(ChannelFacts facts, Excerpt excerpt, decimal fromS, decimal toS, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(excerpt);
        Channel channel = facts.Channel(0, excerpt);
        SpectralFrame frame = facts.Frame(channel);
        using Recording recording = RecordingOf([channel], [excerpt]);
        TimeSurvey time = new(default, new FlatLimits(0, 2, 0, false), 0, 1, null);
        ChannelPops pops = new(channel, [], []);
        GroupPass pass = GroupPass.Of(recording, [channel], [frame]);
        pass.Read(fromS, toS, cancellation);
        WindowReading reading = new WindowReader(recording, channel, frame, time, new SampleRanges(), pops, new CodeHistogram(0, 1, 1))
            .Read(Window.Between(channel, fromS, toS), pass.Spectrum(0), cancellation);
        ChannelSurvey survey = new()
        {
            Channel = channel,
            Name = facts.Name,
            Frame = frame,
            Time = time,
            Clipped = new SampleRanges(),
            Flat = new SampleRanges(),
            Pops = pops,
            Segments = new SegmentTable(),
            Quiet = QuietSegments.Of(new SegmentTable(), 1, new SampleRanges(), []),
            All = reading,
            DriftHidden = null,
            MotionHidden = null,
            IsNearEye = false,
        };
        return
        [
            .. WindowMeasures.Of(reading, survey, false, new ContractionAnswer(null, "not in an excerpt")).Where(measure => IsOfWindowAlone(measure.Measure)),
        ];
    }

    /// <summary>What two channels share in a window; null where they cannot be compared.</summary>
    public static PairReading? OfPair(
        (ChannelFacts Facts, Excerpt Excerpt) a, (ChannelFacts Facts, Excerpt Excerpt) b, decimal fromS, decimal toS, CancellationToken cancellation)
    {
        Channel first = a.Facts.Channel(0, a.Excerpt);
        Channel second = b.Facts.Channel(1, b.Excerpt);
        if (first.Rate != second.Rate || !first.Stretches.AsSpan().SequenceEqual(second.Stretches.AsSpan()))
        {
            return null;
        }

        using Recording recording = RecordingOf([first, second], [a.Excerpt, b.Excerpt]);
        GroupPass pass = GroupPass.Of(recording, [first, second], [a.Facts.Frame(first), b.Facts.Frame(second)]);
        pass.Read(fromS, toS, cancellation);
        PairReading?[] readings = new PairReading?[1];
        pass.CopyPairs(readings);
        return readings[0];
    }

    private static Recording RecordingOf(ImmutableArray<Channel> channels, ImmutableArray<Excerpt> excerpts) => new()
    {
        FileName = "excerpt",
        Format = "excerpt",
        Channels = channels,
        DurationS = channels.Max(channel => channel.Rate.SecondsAt(channel.TimelineLength)),
        Samples = new ExcerptSamples(excerpts),
    };
}
