using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Survey;

/// <summary>Measures windows of one channel, given their mean density.</summary>
public sealed class WindowReader
{
    private readonly Recording recording;
    private readonly Channel channel;
    private readonly SpectralFrame frame;
    private readonly TimeSurvey time;
    private readonly SampleRanges flat;
    private readonly ChannelPops pops;
    private readonly CodeHistogram histogram;
    private readonly RectifiedScanner rectified;
    private readonly Spill densities;

    /// <summary>Prepares to read windows of a channel.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">The channel.</param>
    /// <param name="frame">Its frame.</param>
    /// <param name="time">Its survey.</param>
    /// <param name="flat">Its flat stretches.</param>
    /// <param name="pops">Its pops.</param>
    /// <param name="histogram">Scratch over the channel's range.</param>
    /// <param name="densities">Takes the densities of windows; null: a file of its own.</param>
    public WindowReader(
        Recording recording,
        Channel channel,
        SpectralFrame frame,
        TimeSurvey time,
        SampleRanges flat,
        ChannelPops pops,
        CodeHistogram histogram,
        Spill? densities = null)
    {
        this.densities = densities ?? new Spill();
        this.recording = recording;
        this.channel = channel;
        this.frame = frame;
        this.time = time;
        this.flat = flat;
        this.pops = pops;
        this.histogram = histogram;
        rectified = new RectifiedScanner(frame.Filter, frame.RateHz, pops.PlacesOfPops);
    }

    /// <summary>Reads a window.</summary>
    /// <param name="window">The window.</param>
    /// <param name="spectrum">Its spectrum.</param>
    /// <param name="cancellation">Checked for every block.</param>
    public WindowReading Read(Window window, MeanSpectrum spectrum, CancellationToken cancellation)
    {
        TimeScanner scanner = new(channel, time, histogram);
        rectified.Start();
        foreach (SampleBlock block in SampleBlocks.Of(recording, channel, window.Pieces, cancellation))
        {
            scanner.Add(block);
            rectified.Add(block);
        }

        WindowReading reading = Read(window, scanner.Finish(), spectrum) with { Pops = pops.In(recording, window), Rectified = rectified.Finish() };
        return reading.HasDensity ? reading with { Density = [], Kept = new KeptDensity(densities, spectrum.Density) } : reading;
    }

    /// <summary>Reads a window whose samples were scanned already.</summary>
    public WindowReading Read(Window window, TimeScan scan, MeanSpectrum spectrum)
    {
        (long flatSamples, long flatRun) = FlatWithin(window);
        WindowReading reading = new()
        {
            Window = window,
            RateHz = frame.RateHz,
            Time = scan,
            FlatSamples = flatSamples,
            FlatRun = flatRun,
            Gap = LongestGap(window),
            Segments = spectrum.Segments,
            SegmentPowers = spectrum.Powers,
            Drift = scan.Baseline.Count >= Drift.LeastLevels ? Drift.Of(scan.Baseline, time.Rails) : null,
        };
        return WithSpectrum(reading, spectrum.Density);
    }

    private static long LongestGap(Window window)
    {
        long at = window.Start;
        long longest = 0;
        foreach (Stretch piece in window.Pieces)
        {
            longest = Math.Max(longest, piece.Start - at);
            at = piece.End;
        }

        return Math.Max(longest, window.End - at);
    }

    private (long Samples, long Run) FlatWithin(Window window)
    {
        long samples = 0;
        long run = 0;
        foreach (Stretch piece in window.Pieces)
        {
            (long total, long longest) = flat.Within(piece.Start, piece.End);
            samples += total;
            run = Math.Max(run, longest);
        }

        return (samples, run);
    }

    private WindowReading WithSpectrum(WindowReading reading, double[] density)
    {
        if (channel.NotRaw is { } cause)
        {
            return reading with { NoSpectrum = cause };
        }

        if (!frame.Band.IsUsable)
        {
            return reading with { NoSpectrum = "sampled too slowly for the EMG band" };
        }

        if (reading.Segments > 0)
        {
            double? emg = BandAmplitude.Power(density, frame);
            return reading with
            {
                Density = density,
                EmgPower = emg,
                RestPower = emg,
                Whiteness = Whiteness.Of(density, frame),
                NoisePower = Whiteness.NoisePower(Whiteness.Mean(density, frame.TopRanges), frame.Band),
                LowPower = LowFrequency.Power(density, frame),
                Line = LineNoise.Of(density, frame, reading.Segments),
                Narrow = NarrowPeak.Of(density, frame, reading.Segments),
                Left = Surviving.Of(density, frame, reading.Segments),
            };
        }

        return ShortWindow(reading);
    }

    private WindowReading ShortWindow(WindowReading reading)
    {
        ImmutableArray<Stretch> pieces = reading.Window.Pieces;
        if (pieces.IsEmpty)
        {
            return reading with { NoSpectrum = "no samples in this window" };
        }

        Stretch longest = pieces.MaxBy(piece => piece.Length);
        double seconds = longest.Length / frame.RateHz;
        if (seconds < ShortTrialLine.LeastSeconds || longest.Length < 4 * frame.Harmonics.Length + 8)
        {
            return reading with { NoSpectrum = "no unbroken stretch of 0.2 s" };
        }

        if (reading.Window.Length >= frame.SegmentLength)
        {
            return reading with { NoSpectrum = "no unbroken stretch of 1 s" };
        }

        double[] samples = new double[longest.Length];
        recording.Samples.Read(channel.Index, longest.StoredStart, samples);
        (PeakReading line, double emg, Surviving left) = ShortTrialLine.Of(samples, frame);
        return reading with { Line = line, EmgPower = emg, RestPower = emg, Left = left };
    }
}
