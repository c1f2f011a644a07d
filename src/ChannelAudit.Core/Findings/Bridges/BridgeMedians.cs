using System.Collections.Immutable;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Measures;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Survey;

namespace ChannelAudit.Findings.Bridges;

/// <summary>Medians over the one-second segments of a span: what decides a bridge.</summary>
/// <remarks>A median needs three segments at least; below it is null.</remarks>
internal sealed record BridgeMedians : IMeasured
{
    private const int LeastSegments = 3;
    private const int LeastAlone = 6;
    private const int AloneShare = 3;

    /// <summary>Segments at rest.</summary>
    public required int RestSegments { get; init; }

    /// <summary>Seconds of rest that the segments cover, each half overlapped by the next.</summary>
    public required double RestSeconds { get; init; }

    /// <summary>Contractions of the first channel.</summary>
    public required int ActiveASegments { get; init; }

    /// <summary>Contractions of the second channel.</summary>
    public required int ActiveBSegments { get; init; }

    /// <summary>ρ at rest.</summary>
    public double? RhoRest { get; init; }

    /// <summary>ρ at rest in the high band.</summary>
    public double? RhoHighRest { get; init; }

    /// <summary>Imaginary part at rest.</summary>
    public double? ImaginaryRest { get; init; }

    /// <summary>ρ in contractions of the first.</summary>
    public double? RhoActiveA { get; init; }

    /// <summary>ρ in contractions of the second.</summary>
    public double? RhoActiveB { get; init; }

    /// <summary>Largest imaginary part in contractions, in magnitude.</summary>
    public double? ImaginaryActive { get; init; }

    /// <summary>Gain from the first to the second in contractions of the first.</summary>
    public double? GainAb { get; init; }

    /// <summary>Gain from the second to the first in contractions of the second.</summary>
    public double? GainBa { get; init; }

    /// <summary>Whether all other sites see the same contractions: then they prove nothing.</summary>
    public bool IsActiveShared { get; init; }

    /// <summary>The weaker ρ of the contractions of both; null unless both contracted.</summary>
    public double? RhoActive => Weaker(RhoActiveA, RhoActiveB);

    /// <summary>The weaker of the reciprocal gains; null unless both contracted.</summary>
    public double? GainActive => Weaker(GainAb, GainBa);

    /// <summary>A median by the name that limits know it by, or null.</summary>
    public double? ValueOf(string measure) => measure switch
    {
        "rho_rest" => RhoRest,
        "rho_high_rest" => RhoHighRest,
        "rho_active" => RhoActive,
        "gain_active" => GainActive,
        _ => null,
    };

    /// <summary>Medians of the segments of a span.</summary>
    /// <param name="pair">The pair.</param>
    /// <param name="states">The states of the span's segments.</param>
    /// <param name="mostAlone">Whether contractions are those in which the other site has least; else all.</param>
    public static BridgeMedians Of(PairSurvey pair, PairStates states, bool mostAlone)
    {
        PairTable table = pair.Table ?? throw new ArgumentException("the channels cannot be compared", nameof(pair));
        ReadOnlySpan<int> rest = states.Rest.AsSpan();
        ReadOnlySpan<int> allA = states.ActiveA.AsSpan();
        ReadOnlySpan<int> allB = states.ActiveB.AsSpan();
        ReadOnlySpan<int> activeA = mostAlone ? MostAlone(pair.SegmentsA, pair.SegmentsB, allA) : allA;
        ReadOnlySpan<int> activeB = mostAlone ? MostAlone(pair.SegmentsB, pair.SegmentsA, allB) : allB;
        double? imaginaryA = Median(table.Imaginary, activeA);
        double? imaginaryB = Median(table.Imaginary, activeB);
        return new BridgeMedians
        {
            RestSegments = rest.Length,
            RestSeconds = rest.Length == 0 ? 0 : 0.5 * (rest.Length + 1),
            ActiveASegments = allA.Length,
            ActiveBSegments = allB.Length,
            RhoRest = Median(table.Rho, rest),
            RhoHighRest = table.Bands.HasHigh ? Median(table.RhoHigh, rest) : null,
            ImaginaryRest = Median(table.Imaginary, rest),
            RhoActiveA = Median(table.Rho, activeA),
            RhoActiveB = Median(table.Rho, activeB),
            ImaginaryActive = Math.Abs(imaginaryA ?? 0) >= Math.Abs(imaginaryB ?? 0) ? imaginaryA : imaginaryB,
            GainAb = Median(table.GainAb, activeA),
            GainBa = Median(table.GainBa, activeB),
        };
    }

    /// <summary>
    /// Of the contractions of one site the third in which the other site has least of it: where both muscles move by themselves, what they have in
    /// common is diluted, whether gel joins them or tissue.
    /// </summary>
    private static ReadOnlySpan<int> MostAlone(SegmentTable own, SegmentTable other, ReadOnlySpan<int> segments)
    {
        int kept = Math.Min(segments.Length, Math.Max(LeastAlone, segments.Length / AloneShare));
        (double Share, int Segment)[] sorted = new (double, int)[segments.Length];
        for (int i = 0; i < sorted.Length; i++)
        {
            double power = own.BandPower[segments[i]];
            sorted[i] = (power > 0 ? other.BandPower[segments[i]] / power : double.PositiveInfinity, segments[i]);
        }

        Array.Sort(sorted);
        return Array.ConvertAll(sorted, one => one.Segment).AsSpan(0, kept);
    }

    private static double? Weaker(double? a, double? b) =>
        a is { } first && b is { } second ? (Math.Abs(first) <= Math.Abs(second) ? first : second) : null;

    private static double? Median(Column<float> values, ReadOnlySpan<int> segments)
    {
        double[] chosen = new double[segments.Length];
        int count = 0;
        foreach (int segment in segments)
        {
            float value = values[segment];
            if (float.IsFinite(value))
            {
                chosen[count++] = value;
            }
        }

        return count >= LeastSegments ? Quantiles.MedianInPlace(chosen.AsSpan(0, count)) : null;
    }
}
