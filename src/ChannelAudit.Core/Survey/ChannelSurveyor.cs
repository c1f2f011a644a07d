using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>Puts together what the whole of one channel shows.</summary>
internal static class ChannelSurveyor
{
    private const double JoinClippedSeconds = 0.1;
    private const double LoudProbability = 0.95;

    /// <summary>Surveys the channels of a group, going through the file twice: once for rails and limits, once for what lies beyond them.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="named">The channels and their names.</param>
    /// <param name="frames">Their frames.</param>
    /// <param name="spectra">Their segments.</param>
    /// <param name="trials">The trials; only "rest" and the times are looked at.</param>
    /// <param name="setup">Says what lies at which site.</param>
    /// <param name="cancellation">Checked often.</param>
    public static ImmutableArray<ChannelSurvey> Survey(
        Recording recording,
        ImmutableArray<(Channel Channel, string Name)> named,
        ImmutableArray<SpectralFrame> frames,
        GroupSurvey spectra,
        ImmutableArray<Trial> trials,
        StudySetup setup,
        CancellationToken cancellation)
    {
        ImmutableArray<Channel> channels = [.. named.Select(one => one.Channel)];
        TimeSurveyor[] surveyors = [.. channels.Select(channel => new TimeSurveyor(channel))];
        SampleBlocks.VisitTogether(recording, channels, i => TimeSurveyor.CarryOf(channels[i]), (i, block) => surveyors[i].Add(block), cancellation);
        TimeSurvey[] times = [.. surveyors.Select(surveyor => surveyor.Finish())];

        SampleRanges[] clipped = [.. frames.Select(frame => new SampleRanges((long)(JoinClippedSeconds * frame.RateHz)))];
        SampleRanges[] flat = [.. frames.Select(_ => new SampleRanges())];
        TimeScanner[] scanners =
            [.. channels.Select((channel, i) => new TimeScanner(channel, times[i], HistogramOf(channel, times[i]), clipped[i], flat[i]))];
        SampleBlocks.VisitTogether(
            recording, channels, i => TimeScanner.CarryOf(times[i]), (i, block) => scanners[i].Add(block), cancellation);
        return
        [
            .. named.Select((one, i) =>
                Survey(
                    recording,
                    one,
                    frames[i],
                    spectra,
                    i,
                    times[i],
                    scanners[i].Finish(),
                    clipped[i],
                    flat[i],
                    PopsOf(recording, one.Channel, times[i], trials, cancellation),
                    trials,
                    setup)),
        ];
    }

    private static ChannelSurvey Survey(
        Recording recording,
        (Channel Channel, string Name) named,
        SpectralFrame frame,
        GroupSurvey spectra,
        int member,
        TimeSurvey time,
        TimeScan scan,
        SampleRanges clipped,
        SampleRanges flat,
        ChannelPops pops,
        ImmutableArray<Trial> trials,
        StudySetup setup)
    {
        Channel channel = named.Channel;
        SegmentTable table = spectra.Tables[member];
        QuietSegments quiet = QuietSegments.Of(table, frame.SegmentLength, RestRanges(channel, trials), [clipped, flat, pops.Places]);
        WindowReading all = new WindowReader(recording, channel, frame, time, flat, pops, HistogramOf(channel, time))
            .Read(Window.All(channel), scan, new MeanSpectrum(spectra.Density(member), spectra.Segments, []));
        return new ChannelSurvey
        {
            Channel = channel,
            Name = named.Name,
            Frame = frame,
            Time = time,
            Clipped = clipped,
            Flat = flat,
            Pops = pops,
            Segments = table,
            Quiet = quiet,
            All = all with
            {
                Pops = pops.All,
                LevelTrend = TrendOf(table, quiet, frame),
                RestExcess = RestExcess.Of(quiet.RestPower, time, setup),
                LoudPower = LoudPower(table, quiet),
                RestPower = quiet.RestPower,
                Whiteness = Whiteness.Of(quiet.Quiet.Sum(i => table.Top[i]), quiet.Quiet.Sum(i => table.Middle[i]), frame.Band),
            },
            DriftHidden = DriftGate.Cause(channel, scan.Baseline),
            MotionHidden = MotionGate.Cause(channel, frame, table, quiet.Quiet),
            IsNearEye = EyeSite.Is(channel, named.Name, setup),
            Site = setup.Sites.FirstOrDefault(site => string.Equals(site.Name, named.Name, StringComparison.Ordinal)),
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

    private static ChannelPops PopsOf(
        Recording recording, Channel channel, TimeSurvey time, ImmutableArray<Trial> trials, CancellationToken cancellation)
    {
        (List<Pop> pops, List<Pop> locked) = StimulusLock.Split(PopFinder.Find(recording, channel, time.Pops, cancellation), recording, channel, trials);
        return new ChannelPops(recording, channel, pops, locked);
    }

    private static double? LoudPower(SegmentTable table, QuietSegments quiet)
    {
        double[] clean = [.. table.BandPower.Where((_, i) => quiet.IsClean[i])];
        return clean.Length == 0 ? null : Quantiles.Type7InPlace(clean, LoudProbability);
    }

    private static double? TrendOf(SegmentTable table, QuietSegments quiet, SpectralFrame frame)
    {
        double[] minutes = [.. quiet.Quiet.Select(i => (table.Starts[i] + (0.5 * frame.SegmentLength)) / frame.RateHz / 60)];
        double[] rms = [.. quiet.Quiet.Select(i => Math.Sqrt(table.BandPower[i]))];
        return LevelTrend.Of(minutes, rms);
    }
}
