using ChannelAudit.Measures;
using ChannelAudit.Recordings;

namespace ChannelAudit.Survey;

/// <summary>Scans a window of a channel while its blocks go by.</summary>
public sealed class TimeScanner
{
    private const double PeakProbability = 0.999;

    private readonly TimeSurvey survey;
    private readonly CodeHistogram histogram;
    private readonly SampleRanges? flat;
    private readonly ClippingCount clipping;
    private readonly BaselineLevels baseline;
    private double least = double.PositiveInfinity;
    private double greatest = double.NegativeInfinity;

    /// <summary>Starts with a channel.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="survey">Its survey.</param>
    /// <param name="histogram">Scratch over the channel's range; cleared first.</param>
    /// <param name="clippedPlaces">Receives where samples are at a rail, or null.</param>
    /// <param name="flat">Receives flat stretches, or null.</param>
    public TimeScanner(
        Channel channel, TimeSurvey survey, CodeHistogram histogram, SampleRanges? clippedPlaces = null, SampleRanges? flat = null)
    {
        this.survey = survey;
        this.histogram = histogram;
        this.flat = flat;
        clipping = new ClippingCount(survey.Rails, clippedPlaces);
        baseline = new BaselineLevels(SpectralFrame.SegmentLengthOf(channel.Rate), channel.Rate.Value);
        histogram.Clear();
    }

    /// <summary>Samples before each block that are needed to see flat stretches across blocks.</summary>
    public static int CarryOf(TimeSurvey survey) => Math.Max(survey.FlatLimits.HeldRun, survey.FlatLimits.StillLength);

    /// <summary>Adds the next block.</summary>
    public void Add(SampleBlock block)
    {
        ReadOnlySpan<double> samples = block.Samples.Span;
        (double low, double high) = clipping.Add(samples, block.Start);
        baseline.Add(samples, block.Start);
        least = Math.Min(least, low);
        greatest = Math.Max(greatest, high);
        if (survey.Rails.AnyKnown)
        {
            histogram.Add(samples, low, high);
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

    /// <summary>What the blocks showed.</summary>
    public TimeScan Finish() => new(clipping.Samples, clipping.LongestRun, PeakUse(), baseline, greatest >= least ? greatest - least : null);

    private double? PeakUse()
    {
        if (histogram.Total == 0)
        {
            return null;
        }

        double median = histogram.Median();
        return survey.Rails.DistanceFrom(median) is { } distance and > 0
            ? 100 * histogram.DistanceQuantile(median, PeakProbability) / distance
            : null;
    }
}
