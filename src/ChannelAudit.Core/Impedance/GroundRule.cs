using System.Collections.Immutable;
using static ChannelAudit.Impedance.ImpedanceWords;

namespace ChannelAudit.Impedance;

/// <summary>The ground is one electrode: solved at every site it must come out the same.</summary>
/// <remarks>
/// A site counts when its readings fit together and none is above <see cref="ImpedanceLimits.RedoAboveKohm"/>: beside such readings the ground is a small
/// difference of large numbers. Gel within a pair makes the ground of that site too high, gel to the ground makes it too low
/// at every site and lowest at its own.
/// </remarks>
internal static class GroundRule
{
    /// <summary>The least and the most that two and more sites tell; null when fewer do.</summary>
    public static (double Least, double Most)? Spread(ImmutableArray<SiteImpedance> sites)
    {
        double[] grounds = [.. sites.Where(Counts).Select(Ground)];
        return grounds.Length < 2 ? null : (grounds.Min(), grounds.Max());
    }

    /// <summary>The warning, or none when the sites agree or another warning already says which site is at fault.</summary>
    public static IEnumerable<ImpedanceWarning> Warnings(ImmutableArray<SiteImpedance> sites)
    {
        if (Spread(sites) is not { } spread
            || spread.Most <= (1 + ImpedanceLimits.GroundSpread) * spread.Least
            || spread.Most - spread.Least <= ImpedanceLimits.SmallGroundDifferenceKohm)
        {
            yield break;
        }

        ImmutableArray<SiteImpedance> counted = [.. sites.Where(Counts).OrderBy(Ground)];
        ImmutableArray<SiteImpedance> odd = Odd(counted);
        if (odd.Any(site => site.Warnings.Any(warning => warning.CastsDoubt)))
        {
            yield break;
        }

        yield return new ImpedanceWarning(
            ImpedanceWarningCode.GroundDiffers,
            [.. odd.Select(site => site.Name)],
            $"the ground comes out as {Kohm(spread.Least)} at {counted[0].Name} and {Kohm(spread.Most)} at {counted[^1].Name}, though it is one electrode",
            $"look for gel within the pair of {counted[^1].Name}, and from {counted[0].Name} to the ground; measure all pairs again");
    }

    // Of three and more sites the one furthest from the middle; of two nobody can say.
    private static ImmutableArray<SiteImpedance> Odd(ImmutableArray<SiteImpedance> ordered)
    {
        double middle = (Ground(ordered[(ordered.Length - 1) / 2]) + Ground(ordered[ordered.Length / 2])) / 2;
        double below = middle - Ground(ordered[0]);
        double above = Ground(ordered[^1]) - middle;
        return ordered.Length == 2 || below == above ? [ordered[0], ordered[^1]] : below > above ? [ordered[0]] : [ordered[^1]];
    }

    private static bool Counts(SiteImpedance site) =>
        site.Solved is not null && site.Pairs.All(pair => pair.Grade <= ImpedanceGrade.Wait) && !SiteRules.IsInconsistent(SiteRules.Triple(site));

    private static double Ground(SiteImpedance site) => Math.Max(0, site.Solved!.Value.GroundKohm);
}
