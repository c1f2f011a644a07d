using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>Puts together what the whole of one channel shows.</summary>
internal static class ChannelSurveyor
{
    private const double LoudProbability = 0.95;

    /// <summary>Puts together the channels of a group.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="named">The channels and their names.</param>
    /// <param name="frames">Their frames.</param>
    /// <param name="spectra">Their segments.</param>
    /// <param name="scans">Their samples.</param>
    /// <param name="trials">The trials; only "rest" and the times are looked at.</param>
    /// <param name="setup">Says what lies at which site.</param>
    /// <param name="cancellation">Checked often.</param>
    public static ImmutableArray<ChannelSurvey> Survey(
        Recording recording,
        ImmutableArray<(Channel Channel, string Name)> named,
        ImmutableArray<SpectralFrame> frames,
        GroupSurvey spectra,
        ImmutableArray<ChannelScan> scans,
        ImmutableArray<Trial> trials,
        StudySetup setup,
        CancellationToken cancellation)
    {
        ChannelSurvey[] surveys = new ChannelSurvey[named.Length];
        SideBySide.Each(
            recording,
            named.Length,
            reader => i => surveys[i] = Survey(
                reader, named[i], frames[i], spectra, i, scans[i], PopsOf(reader, named[i].Channel, scans[i].Time, trials, cancellation), trials, setup));
        return ImmutableCollectionsMarshal.AsImmutableArray(surveys);
    }

    private static ChannelSurvey Survey(
        Recording recording,
        (Channel Channel, string Name) named,
        SpectralFrame frame,
        GroupSurvey spectra,
        int member,
        ChannelScan samples,
        ChannelPops pops,
        ImmutableArray<Trial> trials,
        StudySetup setup)
    {
        Channel channel = named.Channel;
        (TimeSurvey time, TimeScan scan, SampleRanges clipped, SampleRanges flat) = samples;
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
        return new ChannelPops(channel, pops, locked);
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
