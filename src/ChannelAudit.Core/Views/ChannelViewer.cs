using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Survey;

namespace ChannelAudit.Views;

/// <summary>Gathers what pictures of channels need, in one more pass over the recording.</summary>
internal static class ChannelViewer
{
    private const int Columns = 1500;
    private const double AroundS = 0.5;
    private const double LongestCloseupS = 8;

    /// <summary>The results with their views.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="survey">Its survey.</param>
    /// <param name="channels">The results, in the survey's order.</param>
    /// <param name="trials">The trials, by number.</param>
    /// <param name="cancellation">Checked for every block.</param>
    public static ImmutableArray<ChannelResult> AddTo(
        Recording recording,
        RecordingSurvey survey,
        ImmutableArray<ChannelResult> channels,
        ImmutableArray<Trial> trials,
        CancellationToken cancellation)
    {
        ImmutableArray<Channel> read = [.. survey.Channels.Select(channel => channel.Channel)];
        TraceBuilder[] whole = [.. read.Select(channel => new TraceBuilder(0, channel.TimelineLength, Columns))];
        SampleBlocks.VisitTogether(recording, read, _ => 0, (i, block) => whole[i].Add(block.Samples.Span, block.Start), cancellation);
        return [.. channels.Select((channel, i) => channel with
        {
            View = Of(survey.Channels[i], whole[i].Finish(survey.Channels[i].Frame.RateHz), CloseupOf(recording, survey.Channels[i], channel, trials, cancellation)),
        })];
    }

    private static ChannelView Of(ChannelSurvey survey, Trace whole, Closeup? closeup) => new()
    {
        Whole = whole,
        Closeup = closeup,
        Density = [.. survey.All.Density],
        BinHz = survey.Frame.BinHz,
        HarmonicsHz = [.. survey.Frame.Harmonics.Select(window => window.Harmonic * survey.Frame.LineHz)],
        LevelTimesS = survey.All.Time.Baseline.Times,
        Levels = survey.All.Time.Baseline.Levels,
        LowerRail = survey.Time.Rails.Lower,
        UpperRail = survey.Time.Rails.Upper,
        RestRms = survey.Quiet.RestPower is { } power ? Math.Sqrt(power) : null,
        IsMicrovolts = survey.Channel.IsMicrovolts,
    };

    private static Closeup? CloseupOf(
        Recording recording, ChannelSurvey survey, ChannelResult channel, ImmutableArray<Trial> trials, CancellationToken cancellation)
    {
        if (WorstTrial.Of(channel) is not { } cell)
        {
            return null;
        }

        Trial trial = trials.First(one => one.Number == cell.Trial);
        double fromS = (double)trial.WindowFromS - AroundS;
        double toS = (double)trial.WindowToS + AroundS;
        if (toS - fromS > LongestCloseupS)
        {
            // A long trial is shown where its worst finding is.
            double atS = WorstTrial.FindingOf(cell) is { } finding ? finding.FromS - AroundS : fromS;
            fromS = Math.Clamp(atS, fromS, toS - LongestCloseupS);
            toS = fromS + LongestCloseupS;
        }

        double rate = survey.Frame.RateHz;
        long start = Math.Max(0, (long)(fromS * rate));
        long end = Math.Min(survey.Channel.TimelineLength, (long)(toS * rate));
        if (end - start < 2)
        {
            return null;
        }

        Window window = Window.Of(survey.Channel.Stretches, start, end);
        TraceBuilder trace = new(start, end, Columns);
        foreach (SampleBlock block in SampleBlocks.Of(recording, survey.Channel, window.Pieces, cancellation))
        {
            trace.Add(block.Samples.Span, block.Start);
        }

        return new Closeup(cell.Trial, trace.Finish(rate), (double)trial.WindowFromS, (double)trial.WindowToS, FaultMarks.In(window, survey.Clipped, survey.Flat, rate));
    }
}
