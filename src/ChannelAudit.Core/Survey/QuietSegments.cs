using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ChannelAudit.Measures;
using ChannelAudit.Segments;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>Which segments of a channel are quiet, and how strong rest is.</summary>
/// <remarks>
/// P_rest is the 20th percentile of the band power of the one-second segments in rest trials (of all segments when there are none),
/// leaving out those with clipping, flat stretches or pops. A segment is quiet when it is free of those and its band power is at most 2 P_rest;
/// steady rest scatters by about 7 % in a second.
/// </remarks>
public sealed class QuietSegments
{
    private const double RestProbability = 0.2;
    private const double QuietTimesRest = 2;

    private QuietSegments(double? restPower, ImmutableArray<bool> isClean, ImmutableArray<bool> isQuiet, ImmutableArray<int> quiet)
    {
        RestPower = restPower;
        IsClean = isClean;
        IsQuiet = isQuiet;
        Quiet = quiet;
    }

    /// <summary>P_rest in unit²; null when no segment is left to tell.</summary>
    public double? RestPower { get; }

    /// <summary>For every segment whether it is free of clipping, flat stretches and pops.</summary>
    public ImmutableArray<bool> IsClean { get; }

    /// <summary>For every segment whether it is quiet.</summary>
    public ImmutableArray<bool> IsQuiet { get; }

    /// <summary>The quiet segments in order.</summary>
    public ImmutableArray<int> Quiet { get; }

    /// <summary>Finds the quiet segments of a channel.</summary>
    /// <param name="table">The channel's segments.</param>
    /// <param name="length">Samples in a segment.</param>
    /// <param name="rest">Sample ranges of rest trials.</param>
    /// <param name="spoilt">Where samples are at a rail, flat, or at pops.</param>
    public static QuietSegments Of(SegmentTable table, int length, SampleRanges rest, ImmutableArray<SampleRanges> spoilt)
    {
        bool[] clean = new bool[table.Count];
        List<double> inRest = [];
        List<double> anywhere = [];
        for (int i = 0; i < table.Count; i++)
        {
            long start = table.Starts[i];
            clean[i] = !spoilt.Any(places => places.Meets(start, start + length));
            if (clean[i])
            {
                anywhere.Add(table.BandPower[i]);
                if (rest.Within(start, start + length).Total == length)
                {
                    inRest.Add(table.BandPower[i]);
                }
            }
        }

        List<double> used = inRest.Count > 0 ? inRest : anywhere;
        if (used.Count == 0)
        {
            return new QuietSegments(null, [.. clean], [.. clean], []);
        }

        double restPower = Quantiles.Type7InPlace(CollectionsMarshal.AsSpan(used), RestProbability);
        bool[] isQuiet = new bool[table.Count];
        ImmutableArray<int>.Builder quiet = ImmutableArray.CreateBuilder<int>();
        for (int i = 0; i < table.Count; i++)
        {
            isQuiet[i] = clean[i] && table.BandPower[i] <= QuietTimesRest * restPower;
            if (isQuiet[i])
            {
                quiet.Add(i);
            }
        }

        return new QuietSegments(
            restPower, ImmutableCollectionsMarshal.AsImmutableArray(clean), ImmutableCollectionsMarshal.AsImmutableArray(isQuiet), quiet.DrainToImmutable());
    }

    /// <summary>Whether a band power is that of an active muscle.</summary>
    public bool IsActive(double bandPower) => RestPower is { } rest && bandPower > QuietTimesRest * rest;
}
