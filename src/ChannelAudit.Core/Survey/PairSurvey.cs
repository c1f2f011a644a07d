using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Survey;

/// <summary>What two channels share over the whole recording, segment by segment.</summary>
public sealed record PairSurvey
{
    /// <summary>Position of the first channel among the audited ones.</summary>
    public required int A { get; init; }

    /// <summary>Position of the second channel.</summary>
    public required int B { get; init; }

    /// <summary>The first channel as it is compared: only the stretches that both have.</summary>
    public required Channel ChannelA { get; init; }

    /// <summary>The second channel as it is compared.</summary>
    public required Channel ChannelB { get; init; }

    /// <summary>Why the two cannot be compared at all, or null.</summary>
    public string? NotComparable { get; init; }

    /// <summary>The first channel's segments, on the pair's own grid.</summary>
    public SegmentTable SegmentsA { get; init; } = new();

    /// <summary>The second channel's segments, on the same grid.</summary>
    public SegmentTable SegmentsB { get; init; } = new();

    /// <summary>Which of the first channel's segments are quiet.</summary>
    public QuietSegments? QuietA { get; init; }

    /// <summary>Which of the second channel's segments are quiet.</summary>
    public QuietSegments? QuietB { get; init; }

    /// <summary>What the two share in each segment; null when they cannot be compared.</summary>
    public PairTable? Table { get; init; }

    /// <summary>The reading over the whole recording.</summary>
    public PairReading? All { get; init; }

    /// <summary>Pairs of channels of one group.</summary>
    internal static IEnumerable<PairSurvey> Inside(ChannelGroup group, GroupSurvey spectra, ChannelSurvey[] surveys)
    {
        for (int a = 0; a < group.Members.Length; a++)
        {
            for (int b = a + 1; b < group.Members.Length; b++)
            {
                if (!spectra.Compares(a, b))
                {
                    continue;
                }

                ChannelSurvey first = surveys[group.Members[a]];
                ChannelSurvey second = surveys[group.Members[b]];
                PairTable table = spectra.Pair(a, b);
                yield return new PairSurvey
                {
                    A = group.Members[a],
                    B = group.Members[b],
                    ChannelA = first.Channel,
                    ChannelB = second.Channel,
                    SegmentsA = first.Segments,
                    SegmentsB = second.Segments,
                    QuietA = first.Quiet,
                    QuietB = second.Quiet,
                    Table = table,
                    All = spectra.PairAll(a, b),
                    NotComparable = WhyNot(first.Channel, second.Channel, table),
                };
            }
        }
    }

    /// <summary>Pairs of channels of different groups: compared where both have samples, when their rates are equal.</summary>
    internal static IEnumerable<PairSurvey> Across(
        Recording recording,
        ImmutableArray<ChannelGroup> groups,
        ChannelSurvey[] surveys,
        Func<int, int, bool>? isCompared,
        ImmutableArray<Trial> trials,
        CancellationToken cancellation)
    {
        for (int g = 0; g < groups.Length; g++)
        {
            for (int h = g + 1; h < groups.Length; h++)
            {
                foreach (int i in groups[g].Members)
                {
                    foreach (int j in groups[h].Members.Where(j => isCompared is null || isCompared(i, j)))
                    {
                        yield return Across(recording, surveys, Math.Min(i, j), Math.Max(i, j), trials, cancellation);
                    }
                }
            }
        }
    }

    private static PairSurvey Across(
        Recording recording, ChannelSurvey[] surveys, int a, int b, ImmutableArray<Trial> trials, CancellationToken cancellation)
    {
        ChannelSurvey first = surveys[a];
        ChannelSurvey second = surveys[b];
        PairSurvey pair = new() { A = a, B = b, ChannelA = first.Channel, ChannelB = second.Channel };
        if (first.Channel.Rate != second.Channel.Rate)
        {
            return pair with { NotComparable = "sampled at different rates" };
        }

        Channel left = first.Channel with { Stretches = Common(first.Channel.Stretches, second.Channel.Stretches) };
        Channel right = second.Channel with { Stretches = Common(second.Channel.Stretches, first.Channel.Stretches) };
        GroupSurvey spectra = GroupSurvey.Of(recording, [left, right], [first.Frame, second.Frame], true, cancellation);
        int length = first.Frame.SegmentLength;
        SampleRanges rest = ChannelSurveyor.RestRanges(left, trials);
        return pair with
        {
            ChannelA = left,
            ChannelB = right,
            SegmentsA = spectra.Tables[0],
            SegmentsB = spectra.Tables[1],
            QuietA = QuietSegments.Of(spectra.Tables[0], length, rest, [first.Clipped, first.Flat, first.Pops.Places]),
            QuietB = QuietSegments.Of(spectra.Tables[1], length, rest, [second.Clipped, second.Flat, second.Pops.Places]),
            Table = spectra.Pair(0, 1),
            All = spectra.PairAll(0, 1),
            NotComparable = WhyNot(left, right, spectra.Pair(0, 1)),
        };
    }

    private static string? WhyNot(Channel first, Channel second, PairTable table) =>
        first.NotRaw ?? second.NotRaw ?? (table.Bands.HasLow ? null : "the band 30 to 250 Hz is not there on both");

    /// <summary>The parts of some stretches that other stretches cover too.</summary>
    private static ImmutableArray<Stretch> Common(ImmutableArray<Stretch> own, ImmutableArray<Stretch> others)
    {
        ImmutableArray<Stretch>.Builder common = ImmutableArray.CreateBuilder<Stretch>();
        foreach (Stretch other in others)
        {
            common.AddRange(Window.Of(own, other.Start, other.End).Pieces);
        }

        return common.DrainToImmutable();
    }
}
