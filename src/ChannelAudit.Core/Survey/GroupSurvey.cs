using System.Collections.Immutable;
using System.Runtime.Intrinsics;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Survey;

/// <summary>One pass over all segments of channels that share their segments: a table a channel, a table a pair, mean spectra.</summary>
public sealed class GroupSurvey
{
    // 12 dB below the muscle: what a single second shows of weaker peaks is chance, and looking at all of them takes half the time.
    private const double LeastNarrowShare = 0.06;

    private readonly ImmutableArray<SpectralFrame> frames;
    private readonly SegmentWalk walk;
    private readonly double[] density;
    private readonly double[] densities;
    private readonly PairSlot[] pairs;
    private readonly Dictionary<(int A, int B), PairSlot> slots;
    private readonly PairPowers[] powers;
    private readonly PowerAccumulator[] power;

    private GroupSurvey(
        Recording recording, ImmutableArray<Channel> channels, ImmutableArray<SpectralFrame> frames, bool withPairs, Func<int, int, bool>? isCompared)
    {
        this.frames = frames;
        walk = new SegmentWalk(recording.Samples, channels, frames[0]);
        density = new double[frames[0].Bins];
        densities = new double[frames[0].Bins * SegmentBatch.Lanes];
        Spill spill = new();
        List<long> starts = [];
        Tables = [.. channels.Select(_ => new SegmentTable(starts, spill))];
        power = [.. channels.Select(_ => new PowerAccumulator(frames[0].Bins))];
        powers = new PairPowers[channels.Length];
        pairs = withPairs ? [.. PairSlot.All(frames, isCompared, spill)] : [];
        slots = pairs.ToDictionary(slot => (slot.A, slot.B));
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
    /// <param name="isCompared">Whether two channels of the group are compared; null: all are.</param>
    public static GroupSurvey Of(
        Recording recording,
        ImmutableArray<Channel> channels,
        ImmutableArray<SpectralFrame> frames,
        bool withPairs,
        CancellationToken cancellation,
        Func<int, int, bool>? isCompared = null)
    {
        GroupSurvey survey = new(recording, channels, frames, withPairs, isCompared);
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

    /// <summary>Whether two channels of the group are compared, the first before the second.</summary>
    public bool Compares(int a, int b) => slots.ContainsKey((a, b));

    /// <summary>The table of two channels of the group, the first before the second.</summary>
    public PairTable Pair(int a, int b) => Slot(a, b).Table;

    /// <summary>The reading of two channels over the whole recording; null when they hold nothing.</summary>
    public PairReading? PairAll(int a, int b)
    {
        PairSlot slot = Slot(a, b);
        return Segments == 0 || !slot.Table.Bands.HasLow ? null : slot.Reading(walk.Batch, Density(a), Density(b));
    }

    private PairSlot Slot(int a, int b) => slots.TryGetValue((a, b), out PairSlot? slot)
        ? slot
        : throw new ArgumentOutOfRangeException(nameof(a), a, "no such pair in the group");

    private void Visit(long firstStart)
    {
        SegmentBatch batch = walk.Batch;
        for (int member = 0; member < frames.Length; member++)
        {
            power[member].Add(batch, member);
            AddSegments(member, firstStart);
            powers[member] = PairPowers.Of(frames[member], batch, member);
        }

        for (int i = 0; i < pairs.Length; i++)
        {
            pairs[i].Add(batch, powers);
        }
    }

    private void AddSegments(int member, long firstStart)
    {
        SegmentBatch batch = walk.Batch;
        SpectralFrame frame = frames[member];
        SegmentTable table = Tables[member];
        batch.Densities(member, densities);
        LaneSpectra lanes = new(densities, frame);
        Vector256<double> band = lanes.BandPower();
        Vector256<double> low = lanes.Power(frame.LowBins);
        Vector256<double> lowest = lanes.Power(frame.LowestBins);
        Vector256<double> middle = lanes.Mean(frame.MiddleRanges);
        Vector256<double> top = lanes.Mean(frame.TopRanges);
        Vector256<double> left = lanes.BandLeft();
        (Vector256<double> line, Vector256<double> variance, Vector256<double> lineLeft, Vector256<double> varianceLeft) = lanes.Line();
        Vector256<double> least = LeastNarrowShare * (frame.Filter.IsStated ? left : band);
        Vector256<double> narrow = lanes.MayHoldNarrowPeak(least);
        for (int lane = 0; lane < batch.Segments; lane++)
        {
            if (member == 0)
            {
                table.Starts.Add(firstStart + ((long)lane * frame.Hop));
            }

            table.BandPower.Add(band[lane]);
            table.LowPower.Add(low[lane]);
            table.LowestPower.Add(lowest[lane]);
            table.Middle.Add(middle[lane]);
            table.Top.Add(top[lane]);
            table.Line.Add(new PeakReading(line[lane], Math.Sqrt(variance[lane]), frame.LineHz));
            table.BandLeft.Add(left[lane]);
            table.LineLeft.Add(new PeakReading(lineLeft[lane], Math.Sqrt(varianceLeft[lane]), frame.LineHz));
            bool mayHold = BitConverter.DoubleToInt64Bits(narrow[lane]) != 0;
            table.Narrow.Add(mayHold ? Narrow(member, lane, least[lane], []) : default);
            table.NarrowLeft.Add(mayHold ? Narrow(member, lane, least[lane], frame.Passes) : default);
        }
    }

    private PeakReading Narrow(int member, int lane, double leastPower, ReadOnlySpan<double> passes)
    {
        walk.Batch.Density(member, lane, density);
        return NarrowPeak.Of(density, frames[member], 1, leastPower, passes);
    }
}
