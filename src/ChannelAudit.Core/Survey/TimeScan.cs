using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Survey;

/// <summary>What a window shows without any spectrum: rails, use of the range, baseline.</summary>
/// <param name="ClippedSamples">Samples at a rail.</param>
/// <param name="ClippedRun">Longest run at a rail, in samples.</param>
/// <param name="PeakUsePercent">99.9th percentile of the distance from the median against the nearer rail; null without rails or samples.</param>
/// <param name="Baseline">One level a second.</param>
public sealed record TimeScan(long ClippedSamples, long ClippedRun, double? PeakUsePercent, BaselineLevels Baseline)
{
    private const double PeakProbability = 0.999;

    /// <summary>Scans the stored pieces of a window.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">The channel.</param>
    /// <param name="survey">The channel's survey.</param>
    /// <param name="window">The window.</param>
    /// <param name="histogram">Scratch of the channel's range; cleared first.</param>
    /// <param name="cancellation">Checked for every block.</param>
    /// <param name="clippedPlaces">Receives where samples are at a rail, or null.</param>
    /// <param name="flat">Receives flat stretches, or null.</param>
    public static TimeScan Of(
        Recording recording,
        Channel channel,
        TimeSurvey survey,
        Window window,
        CodeHistogram histogram,
        CancellationToken cancellation,
        SampleRanges? clippedPlaces = null,
        SampleRanges? flat = null)
    {
        ClippingCount clipping = new(survey.Rails, clippedPlaces);
        BaselineLevels baseline = new(SpectralFrame.SegmentLengthOf(channel.Rate), channel.Rate.Value);
        bool needsHistogram = survey.Rails.AnyKnown;
        int carry = flat is null ? 0 : Math.Max(survey.FlatLimits.HeldRun, survey.FlatLimits.StillLength);
        histogram.Clear();
        foreach (SampleBlock block in SampleBlocks.Of(recording, channel, window.Pieces, cancellation, carry))
        {
            ReadOnlySpan<double> samples = block.Samples.Span;
            clipping.Add(samples, block.Start);
            baseline.Add(samples, block.Start);
            if (needsHistogram)
            {
                histogram.Add(samples);
            }

            if (flat is not null)
            {
                FlatStretches.AddTo(flat, block.WithCarry.Span, block.CarryStart, survey.FlatLimits, survey.Rails);
            }

            if (block.EndsPiece)
            {
                clipping.Break(block.End);
            }
        }

        return new TimeScan(clipping.Samples, clipping.LongestRun, PeakUse(histogram, survey.Rails), baseline);
    }

    private static double? PeakUse(CodeHistogram histogram, Rails rails)
    {
        if (histogram.Total == 0)
        {
            return null;
        }

        double median = histogram.Median();
        return rails.DistanceFrom(median) is { } distance and > 0
            ? 100 * histogram.DistanceQuantile(median, PeakProbability) / distance
            : null;
    }
}
