using System.Collections.Immutable;
using static ChannelAudit.Impedance.ImpedanceLimits;
using static ChannelAudit.Impedance.ImpedanceWords;

namespace ChannelAudit.Impedance;

/// <summary>What the readings of one site can warn of.</summary>
internal static class SiteRules
{
    /// <summary>Whether the three latest readings are there, of one phase, and close enough in time to be put together.</summary>
    public static bool AreTogether(SiteImpedance site)
    {
        if (!site.IsComplete)
        {
            return false;
        }

        ReadingTime[] times = [.. site.Pairs.Select(pair => pair.Time).OfType<ReadingTime>()];
        bool isOnePhase = site.Pairs.All(pair => pair.Course!.Latest.IsOfPhase(site.Pairs[0].Phase));
        return isOnePhase && (times.Length < 2 || times.MinBy(time => time.At).MinutesTo(times.MaxBy(time => time.At)) <= TogetherMinutes);
    }

    /// <summary>The three latest readings of a site that has them.</summary>
    public static ImpedanceTriple Triple(SiteImpedance site) => new(
        site[ImpedancePair.AToB].Kohm!.Value, site[ImpedancePair.AToGround].Kohm!.Value, site[ImpedancePair.BToGround].Kohm!.Value);

    /// <summary>All warnings about the site alone, the most urgent first.</summary>
    public static ImmutableArray<ImpedanceWarning> Warnings(SiteImpedance site)
    {
        List<ImpedanceWarning> warnings = [.. Joints(site)];
        if (site.Solved is { } solved && warnings.Count == 0)
        {
            warnings.AddRange(IsInconsistent(Triple(site)) ? [Inconsistent(site)] : Imbalance(site, solved));
        }

        warnings.AddRange(Drifted(site));
        warnings.AddRange(NotSettling(site));
        warnings.AddRange(Parts(site));
        return [.. warnings.OrderBy(warning => warning.Code)];
    }

    /// <summary>Whether one reading is more than the two others together, beyond what their phases allow: a contact below zero.</summary>
    public static bool IsInconsistent(ImpedanceTriple readings)
    {
        double most = Math.Max(readings.AbKohm, Math.Max(readings.AGroundKohm, readings.BGroundKohm));
        double others = readings.AbKohm + readings.AGroundKohm + readings.BGroundKohm - most;
        return most > (1 + Tolerance) * others && most - others > SmallDifferenceKohm;
    }

    // Too good to be true: one reading far below the two others of the site, or all three below what skin can have.
    private static IEnumerable<ImpedanceWarning> Joints(SiteImpedance site)
    {
        if (site.Solved is null)
        {
            yield break;
        }

        (double ab, double ag, double bg) = Triple(site);
        if (ab <= TooLowKohm && ag <= TooLowKohm && bg <= TooLowKohm)
        {
            yield return new ImpedanceWarning(
                ImpedanceWarningCode.TooLow, [site.Name], $"all three readings are {Kohm(TooLowKohm)} or less: too good to be true",
                "look for gel between all three contacts and for leads that touch; check the meter's unit; measure again");
            yield break;
        }

        if (IsJoint(ab, ag, bg))
        {
            yield return new ImpedanceWarning(
                ImpedanceWarningCode.PairJoined, [site.Name],
                $"{Of(ImpedancePair.AToB, site)} reads {Kohm(ab)} beside {Kohm(ag)} and {Kohm(bg)} to the ground: too good to be true, gel may join the two",
                "look for gel between the two electrodes, wipe it away, renew the pair if need be, measure all three again");
        }

        foreach ((string name, double own, double other) in new[] { (site.NameOfA, ag, bg), (site.NameOfB, bg, ag) })
        {
            if (IsJoint(own, ab, other))
            {
                yield return new ImpedanceWarning(
                    ImpedanceWarningCode.GroundJoined, [site.Name],
                    $"{name} to ground reads {Kohm(own)} beside {Kohm(ab)} and {Kohm(other)}: too good to be true, gel may reach the ground",
                    $"look for gel between electrode {name} and the ground, wipe it away, measure every site again");
            }
        }
    }

    private static bool IsJoint(double low, double one, double other) => low <= TooLowKohm && Math.Min(one, other) > JointRatio * low;

    private static ImpedanceWarning Inconsistent(SiteImpedance site)
    {
        PairImpedance most = site.Pairs.MaxBy(pair => pair.Kohm)!;
        IEnumerable<string> others = site.Pairs.Where(pair => pair != most).Select(pair => Kohm(pair.Kohm!.Value));
        return new ImpedanceWarning(
            ImpedanceWarningCode.Inconsistent, [site.Name],
            $"{Of(most.Pair, site)} reads {Kohm(most.Kohm!.Value)}, more than {string.Join(" and ", others)} together: no three contacts read like that",
            "measure all three again, the leads firmly in");
    }

    private static IEnumerable<ImpedanceWarning> Imbalance(SiteImpedance site, SolvedImpedance solved)
    {
        double high = Math.Max(solved.AKohm, solved.BKohm);
        double low = Math.Max(0, Math.Min(solved.AKohm, solved.BKohm));
        bool isFarApart = high - low > ImbalanceKohm || (high > ImbalanceRatio * low && high - low > SmallDifferenceKohm);
        if (isFarApart)
        {
            string worse = solved.AKohm > solved.BKohm ? site.NameOfA : site.NameOfB;
            yield return new ImpedanceWarning(
                ImpedanceWarningCode.Imbalance, [site.Name],
                $"{site.NameOfA} is about {Kohm(solved.AKohm)}, {site.NameOfB} about {Kohm(solved.BKohm)}: unequal, expect mains in the signal",
                $"{(site.Pairs[0].Course!.Latest.IsAfter ? "next time, " : string.Empty)}renew electrode {worse} alone, if your protocol lets you");
        }
    }

    private static IEnumerable<ImpedanceWarning> Drifted(SiteImpedance site)
    {
        ImpedanceCourse[] drifted = [.. site.Pairs.Select(pair => pair.Course).OfType<ImpedanceCourse>().Where(course => course.HasDrifted)];
        if (drifted.Length == 0)
        {
            yield break;
        }

        bool hasRisen = drifted.Any(HasRisen);
        yield return new ImpedanceWarning(
            ImpedanceWarningCode.Drifted, [site.Name],
            string.Join(", ", drifted.Select(course =>
                $"{Of(course.Latest.Pair, site)} {(HasRisen(course) ? "rose" : "fell")} from {Kohm(course.Reference!.Kohm)}{When(course.Reference)} "
                + $"to {Kohm(course.Latest.Kohm)}{When(course.Latest)}")),
            !hasRisen ? "if the site was not prepared anew, that is more than gel soaking in: see whether gel has spread"
                : drifted[0].Latest.IsAfter ? "a contact may have come loose in between: look at the signal of this site to the end"
                : "see whether the electrode or its lead has come loose");
    }

    private static bool HasRisen(ImpedanceCourse course) => course.Latest.Kohm > course.Reference!.Kohm;

    private static string When(LoggedReading reading) =>
        reading.Time is { } time ? $" at {time.Clock}" : reading.Phase is { } phase ? $" ({Text.OneLine.Of(phase)})" : string.Empty;

    private static IEnumerable<ImpedanceWarning> NotSettling(SiteImpedance site) => site.Pairs
        .Where(pair => pair is { Grade: ImpedanceGrade.Wait, Course: { Latest.IsAfter: false, MinutesSinceReference: >= LongestWaitMinutes } })
        .Select(pair => new ImpedanceWarning(
            ImpedanceWarningCode.NotSettling, [site.Name],
            FormattableString.Invariant($"{Of(pair.Pair, site)} is {Kohm(pair.Kohm!.Value)} after {pair.Course!.MinutesSinceReference:0} minutes"),
            "waiting will hardly help now: prepare again if your protocol lets you, or leave it and write it down"));

    private static IEnumerable<ImpedanceWarning> Parts(SiteImpedance site)
    {
        string missing = string.Join(", ", site.Pairs.Where(pair => pair.Grade is null).Select(pair => Of(pair.Pair, site)));
        if (missing.Length > 0)
        {
            bool isNone = site.Pairs.All(pair => pair.Grade is null);
            yield return new ImpedanceWarning(
                ImpedanceWarningCode.Incomplete, [site.Name], isNone ? "no reading" : $"not read: {missing}", "measure all three pairs of the site");
        }
        else if (site.Solved is null)
        {
            yield return new ImpedanceWarning(
                ImpedanceWarningCode.NotTogether, [site.Name],
                FormattableString.Invariant(
                    $"the three latest readings are not of one phase, or lie more than {TogetherMinutes} minutes apart: contacts not solved"),
                "measure all three pairs together");
        }
    }
}
