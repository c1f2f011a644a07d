using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Survey;

/// <summary>One pass over all segments of channels that share their segments: a table a channel, a table a pair, mean spectra.</summary>
public sealed class GroupSurvey
{
    private const double LowFromHz = 2;
    private const double LowToHz = 15;

    // A single segment scatters too much for a narrow peak below this share of the band power to mean anything.
    private const double LeastNarrowShare = 0.03;

    private readonly ImmutableArray<SpectralFrame> frames;
    private readonly SegmentWalk walk;
    private readonly double[] density;
    private readonly PairSlot[] pairs;
    private readonly PowerAccumulator[] power;

    private GroupSurvey(Recording recording, ImmutableArray<Channel> channels, ImmutableArray<SpectralFrame> frames, bool withPairs)
    {
        this.frames = frames;
        walk = new SegmentWalk(recording.Samples, channels, frames[0]);
        density = new double[frames[0].Bins];
        Tables = [.. channels.Select(_ => new SegmentTable())];
        power = [.. channels.Select(_ => new PowerAccumulator(frames[0].Bins))];
        pairs = withPairs ? [.. PairSlot.All(frames)] : [];
    }

    /// <summary>One table a channel, in the group's order.</summary>
    public ImmutableArray<SegmentTable> Tables { get; }

    /// <summary>Segments of the whole recording.</summary>
    public int Segments { get; private set; }

    /// <summary>Surveys the whole recording.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channels">Channels of one group.</param>
    /// <param name="frames">Their frames.</param>
    /// <param name="withPairs">Whether to compare the channels with one another.</param>
    /// <param name="cancellation">Checked for every four segments.</param>
    public static GroupSurvey Of(
        Recording recording,
        ImmutableArray<Channel> channels,
        ImmutableArray<SpectralFrame> frames,
        bool withPairs,
        CancellationToken cancellation)
    {
        GroupSurvey survey = new(recording, channels, frames, withPairs);
        survey.Segments = survey.walk.Visit([.. channels.Select(channel => channel.Stretches)], survey.Visit, cancellation);
        return survey;
    }

    /// <summary>The mean density of a channel of the group; empty when there is no segment.</summary>
    public double[] Density(int member)
    {
        if (power[member].Segments == 0)
        {
            return [];
        }

        double[] mean = new double[frames[member].Bins];
        power[member].Density(walk.Batch, mean);
        return mean;
    }

    /// <summary>The table of two channels of the group, the first before the second.</summary>
    public PairTable Pair(int a, int b) => Slot(a, b).Table;

    /// <summary>The reading of two channels over the whole recording; null when they hold nothing.</summary>
    public PairReading? PairAll(int a, int b)
    {
        PairSlot slot = Slot(a, b);
        return Segments == 0 || !slot.Table.Bands.HasLow ? null : slot.Reading(walk.Batch, Density(a), Density(b));
    }

    private PairSlot Slot(int a, int b) => Array.Find(pairs, slot => slot.A == a && slot.B == b)
        ?? throw new ArgumentOutOfRangeException(nameof(a), a, "no such pair in the group");

    private void Visit(long firstStart)
    {
        SegmentBatch batch = walk.Batch;
        for (int member = 0; member < frames.Length; member++)
        {
            power[member].Add(batch, member);
            AddSegments(member, firstStart);
        }

        foreach (PairSlot slot in pairs)
        {
            slot.Add(batch);
        }
    }

    private void AddSegments(int member, long firstStart)
    {
        SegmentBatch batch = walk.Batch;
        SpectralFrame frame = frames[member];
        SegmentTable table = Tables[member];
        for (int lane = 0; lane < batch.Segments; lane++)
        {
            batch.Density(member, lane, density);
            double band = BandAmplitude.Power(density, frame) ?? 0;
            table.Starts.Add(firstStart + ((long)lane * frame.Hop));
            table.BandPower.Add(band);
            table.Line.Add(LineNoise.Of(density, frame, 1));
            table.Narrow.Add(NarrowPeak.Of(density, frame, 1, LeastNarrowShare * band));
            table.LowPower.Add(LowFrequency(frame));
        }
    }

    private double LowFrequency(SpectralFrame frame)
    {
        double sum = 0;
        int last = Math.Min(frame.Bins - 1, (int)Math.Floor((LowToHz / frame.BinHz) + 1e-9));
        for (int bin = (int)Math.Ceiling((LowFromHz / frame.BinHz) - 1e-9); bin <= last; bin++)
        {
            sum += density[bin];
        }

        return sum * frame.BinHz;
    }
}
