using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Bridges;

/// <summary>Whether all channels share a signal at rest: the ground, the amplifier or a remote muscle, not gel between two sites.</summary>
/// <remarks>
/// From three channels on. Every pair correlates at rest by 0.30 and more (above 300 Hz by 0.12), the weakest at least half as much as the strongest, and the signs are those of one source: of
/// three pairs among three channels none or two are negative. Gel joins two sites and leaves the third alone. Engineering judgement (docs/information.md).
/// </remarks>
internal static class SharedByAll
{
    private const double LeastRest = 0.30;
    private const double LeastHigh = 0.12;
    private const double LeastOfStrongest = 0.5;
    private const double LeastRestSeconds = 4;

    /// <summary>The information, or null.</summary>
    /// <param name="names">The channels.</param>
    /// <param name="medians">The medians of the pair of two channels, first before second; null when they were not compared.</param>
    /// <param name="endS">End of the recording.</param>
    public static Finding? Of(ImmutableArray<string> names, Func<int, int, BridgeMedians?> medians, double endS)
    {
        if (names.Length < 3)
        {
            return null;
        }

        (string Where, double[] Values)? shared =
            Alike(names.Length, medians, one => one.RhoRest, LeastRest) is { } rest ? ("at rest", rest)
            : Alike(names.Length, medians, one => one.RhoHighRest, LeastHigh) is { } high ? ("at rest above 300 Hz", high)
            : null;
        return shared is not { } found ? null : new Finding
        {
            Reason = ReasonCode.CommonSource,
            Grade = Grade.Pass,
            Channels = names,
            FromS = 0,
            ToS = endS,
            Evidence = [],
            Text = string.Create(
                CultureInfo.InvariantCulture,
                $"all {names.Length} channels share signal alike {found.Where}: correlations of {found.Values.Min(Math.Abs):0.00} to {found.Values.Max(Math.Abs):0.00} in size"),
            Cause = "the ground, the amplifier or a muscle further off, which all sites see; not gel between two of them",
        };
    }

    private static double[]? Alike(int channels, Func<int, int, BridgeMedians?> medians, Func<BridgeMedians, double?> valueOf, double least)
    {
        double?[,] values = new double?[channels, channels];
        for (int a = 0; a < channels; a++)
        {
            for (int b = a + 1; b < channels; b++)
            {
                BridgeMedians? pair = medians(a, b);
                values[a, b] = values[b, a] = pair is { RestSeconds: >= LeastRestSeconds } && Math.Abs(pair.ImaginaryRest ?? 0) <= BridgeDecision.MostImaginary ? valueOf(pair) : null;
            }
        }

        double[] all = [.. Pairs(channels).Select(pair => values[pair.A, pair.B]).OfType<double>()];
        bool isOneSource = all.Length == channels * (channels - 1) / 2
            && Pairs(channels).All(pair => pair.A == 0 || Math.Sign(values[0, pair.A]!.Value) * Math.Sign(values[0, pair.B]!.Value) == Math.Sign(values[pair.A, pair.B]!.Value));
        double weakest = all.Length == 0 ? 0 : all.Min(Math.Abs);
        return isOneSource && weakest >= least && weakest >= LeastOfStrongest * all.Max(Math.Abs) ? all : null;
    }

    private static IEnumerable<(int A, int B)> Pairs(int channels) =>
        from a in Enumerable.Range(0, channels) from b in Enumerable.Range(a + 1, channels - a - 1) select (a, b);
}
