using System.Collections.Immutable;
using System.Runtime.Intrinsics;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Survey;

/// <summary>Mean spectra of windows of time for channels that are transformed together: a group, or two channels of different groups.</summary>
internal sealed class GroupPass
{
    private readonly ImmutableArray<Channel> channels;
    private readonly ImmutableArray<SpectralFrame> frames;
    private readonly SegmentWalk walk;
    private readonly PowerAccumulator[] power;
    private readonly ImmutableArray<SegmentPower>.Builder[] powers;
    private readonly double[] densities;
    private readonly double[]?[] means;
    private readonly ImmutableArray<(int Index, PairSlot Slot)> pairs;

    private GroupPass(
        Recording recording, RecordingSurvey survey, bool isGroup, ImmutableArray<int> members, ImmutableArray<Channel> channels)
        : this(recording, isGroup, members, channels, [.. members.Select(i => survey.Channels[i].Frame)], survey.IndexOfPair)
    {
    }

    private GroupPass(
        Recording recording,
        bool isGroup,
        ImmutableArray<int> members,
        ImmutableArray<Channel> channels,
        ImmutableArray<SpectralFrame> frames,
        Func<int, int, int> indexOfPair)
    {
        this.channels = channels;
        this.frames = frames;
        IsGroup = isGroup;
        Members = members;
        walk = new SegmentWalk(recording.Samples, channels, frames[0]);
        power = [.. channels.Select(_ => new PowerAccumulator(frames[0].Bins))];
        powers = [.. channels.Select(_ => ImmutableArray.CreateBuilder<SegmentPower>())];
        densities = new double[frames[0].Bins * SegmentBatch.Lanes];
        means = new double[]?[channels.Length];
        pairs = [.. PairSlot.All(frames, (a, b) => indexOfPair(members[a], members[b]) >= 0).Select(slot => (indexOfPair(members[slot.A], members[slot.B]), slot))];
    }

    /// <summary>Whether this is a group of channels; false for two channels of different groups, compared only.</summary>
    public bool IsGroup { get; }

    /// <summary>Positions of the channels among the audited ones.</summary>
    public ImmutableArray<int> Members { get; }

    /// <summary>Segments of the last window.</summary>
    public int Segments { get; private set; }

    /// <summary>The passes that cover all channels and all comparable pairs of a recording.</summary>
    public static ImmutableArray<GroupPass> All(Recording recording, RecordingSurvey survey)
    {
        ImmutableArray<Channel> all = [.. survey.Channels.Select(channel => channel.Channel)];
        ImmutableArray<ChannelGroup> groups = ChannelGroup.Of(all);
        return
        [
            .. groups.Select(group =>
                new GroupPass(recording, survey, true, group.Members, [.. group.Members.Select(i => all[i])])),
            .. survey.Pairs
                .Where(pair => pair.NotComparable is null && !groups.Any(group => Holds(group, pair)))
                .Select(pair => new GroupPass(recording, survey, false, [pair.A, pair.B], [pair.ChannelA, pair.ChannelB])),
        ];
    }

    /// <summary>A pass over one or two channels of which nothing but their frames is known.</summary>
    /// <param name="recording">The recording, or what is left of it.</param>
    /// <param name="channels">The channels; the pair of two has the place 0.</param>
    /// <param name="frames">Their frames.</param>
    public static GroupPass Of(Recording recording, ImmutableArray<Channel> channels, ImmutableArray<SpectralFrame> frames) =>
        new(recording, true, [.. Enumerable.Range(0, channels.Length)], channels, frames, (_, _) => 0);

    /// <summary>Reads the segments of a span of time.</summary>
    public void Read(decimal fromS, decimal toS, CancellationToken cancellation)
    {
        Reset();
        Segments = walk.Visit([.. channels.Select(channel => Window.Between(channel, fromS, toS).Pieces)], _ => Add(), cancellation);
    }

    /// <summary>Reads the pairs of this pass over their rest and their contractions.</summary>
    /// <param name="statesOf">The states of a pair's segments.</param>
    /// <param name="rows">Receives the readings.</param>
    /// <param name="cancellation">Checked often.</param>
    public void ReadStates(Func<int, PairStates?> statesOf, PairStateRows[] rows, CancellationToken cancellation)
    {
        List<PairStateMeans> open = [];
        int total = channels[0].Stretches.Sum(stretch => Welch.SegmentCount(stretch.Length, frames[0].SegmentLength, frames[0].Hop));
        foreach ((int index, PairSlot slot) in pairs)
        {
            if (statesOf(index) is { } states && slot.Table.Bands.HasLow)
            {
                open.Add(new PairStateMeans(
                    index, Means(slot, states.Rest, total), Means(slot, states.ActiveA, total), Means(slot, states.ActiveB, total)));
            }
        }

        if (open.Count == 0)
        {
            return;
        }

        int first = 0;
        walk.Visit(
            [.. channels.Select(channel => channel.Stretches)],
            _ => open.ForEach(pair => pair.Add(walk.Batch, first)),
            cancellation,
            (number, count) =>
            {
                first = number;
                return open.Exists(pair => pair.Wants(number, count));
            });
        open.ForEach(pair => rows[pair.Index] = pair.Rows(walk.Batch));
    }

    /// <summary>The spectrum of a member over the last window.</summary>
    public MeanSpectrum Spectrum(int member) => new(Density(member), Segments, powers[member].ToImmutable());

    // Asked for by the channel's own spectrum and by each of its pairs.
    private double[] Density(int member)
    {
        if (means[member] is { } known)
        {
            return known;
        }

        double[] mean = Segments == 0 ? [] : new double[frames[member].Bins];
        if (Segments > 0)
        {
            power[member].Density(walk.Batch, mean);
        }

        means[member] = mean;
        return mean;
    }

    /// <summary>Writes the readings of this pass's pairs into their places.</summary>
    public void CopyPairs(PairReading?[] readings)
    {
        foreach ((int index, PairSlot slot) in pairs)
        {
            readings[index] = slot.Reading(walk.Batch, Density(slot.A), Density(slot.B));
        }
    }

    private static bool Holds(ChannelGroup group, PairSurvey pair) => group.Members.Contains(pair.A) && group.Members.Contains(pair.B);

    private void Reset()
    {
        means.AsSpan().Clear();
        foreach (PowerAccumulator accumulator in power)
        {
            accumulator.Reset();
        }

        foreach (ImmutableArray<SegmentPower>.Builder ofMember in powers)
        {
            ofMember.Clear();
        }

        foreach ((_, PairSlot slot) in pairs)
        {
            slot.ResetMean();
        }
    }

    private StateMeans Means(PairSlot slot, ImmutableArray<int> segments, int total) =>
        new(slot.Table.Bands, slot.A, slot.B, frames[0].Bins, segments, total);

    private void Add()
    {
        for (int member = 0; member < power.Length; member++)
        {
            power[member].Add(walk.Batch, member);
            if (IsGroup)
            {
                AddPowers(member);
            }
        }

        foreach ((_, PairSlot slot) in pairs)
        {
            slot.AddToMean(walk.Batch);
        }
    }

    private void AddPowers(int member)
    {
        walk.Batch.Densities(member, densities);
        LaneSpectra lanes = new(densities, frames[member]);
        Vector256<double> low = lanes.Power(frames[member].LowBins);
        Vector256<double> band = lanes.BandPower();
        Vector256<double> lowLeft = lanes.PowerLeft(frames[member].LowBins);
        Vector256<double> bandLeft = lanes.BandLeft();
        Vector256<double> totalLeft = lanes.PowerLeft(new BinRange(1, frames[member].Bins - 1));
        Vector256<double> middle = lanes.Mean(frames[member].MiddleRanges);
        Vector256<double> top = lanes.Mean(frames[member].TopRanges);
        for (int lane = 0; lane < walk.Batch.Segments; lane++)
        {
            powers[member].Add(new SegmentPower(low[lane], band[lane], lowLeft[lane], bandLeft[lane], totalLeft[lane], middle[lane], top[lane]));
        }
    }
}
