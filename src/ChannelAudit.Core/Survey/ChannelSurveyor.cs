using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Survey;

/// <summary>Puts together what the whole of one channel shows.</summary>
internal static class ChannelSurveyor
{
    private const double JoinClippedSeconds = 0.1;

    /// <summary>Surveys one member of a group.</summary>
    public static ChannelSurvey Survey(
        Recording recording,
        (Channel Channel, string Name) named,
        SpectralFrame frame,
        GroupSurvey spectra,
        int member,
        IEnumerable<Trial> trials,
        CancellationToken cancellation)
    {
        Channel channel = named.Channel;
        TimeSurvey time = TimeSurvey.Of(recording, channel, cancellation);
        SampleRanges clipped = new((long)(JoinClippedSeconds * frame.RateHz));
        SampleRanges flat = new();
        CodeHistogram histogram = HistogramOf(channel, time);
        Window window = Window.All(channel);
        TimeScan scan = TimeScan.Of(recording, channel, time, window, histogram, cancellation, clipped, flat);
        SegmentTable table = spectra.Tables[member];
        QuietSegments quiet = QuietSegments.Of(table, frame.SegmentLength, RestRanges(channel, trials), clipped, flat);
        WindowReading all = new WindowReader(recording, channel, frame, time, flat, histogram)
            .Read(window, scan, spectra.Density(member), spectra.Segments);
        return new ChannelSurvey
        {
            Channel = channel,
            Name = named.Name,
            Frame = frame,
            Time = time,
            Clipped = clipped,
            Flat = flat,
            Segments = table,
            Quiet = quiet,
            All = all with { LevelTrend = TrendOf(table, quiet, frame) },
            DriftHidden = DriftGate.Cause(channel, scan.Baseline),
        };
    }

    /// <summary>Sample ranges of the rest trials of a channel.</summary>
    public static SampleRanges RestRanges(Channel channel, IEnumerable<Trial> trials)
    {
        SampleRanges rest = new();
        foreach (Trial trial in trials.Where(trial => trial.Role == TrialRole.Rest))
        {
            Window window = Window.Between(channel, trial.WindowFromS, trial.WindowToS);
            if (window.Length > 0)
            {
                rest.Add(window.Start, window.End);
            }
        }

        return rest;
    }

    /// <summary>A histogram over the values that a channel can take.</summary>
    public static CodeHistogram HistogramOf(Channel channel, TimeSurvey time)
    {
        double least = Math.Min(channel.LowerRail ?? time.Least, time.Least);
        double greatest = Math.Max(channel.UpperRail ?? time.Greatest, time.Greatest);
        return double.IsFinite(least) && double.IsFinite(greatest)
            ? new CodeHistogram(least, greatest, channel.Step)
            : new CodeHistogram(0, 1, 1);
    }

    private static double? TrendOf(SegmentTable table, QuietSegments quiet, SpectralFrame frame)
    {
        double[] minutes = [.. quiet.Quiet.Select(i => (table.Starts[i] + (0.5 * frame.SegmentLength)) / frame.RateHz / 60)];
        double[] rms = [.. quiet.Quiet.Select(i => Math.Sqrt(table.BandPower[i]))];
        return LevelTrend.Of(minutes, rms);
    }
}
