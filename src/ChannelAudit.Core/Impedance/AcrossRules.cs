using System.Collections.Immutable;
using ChannelAudit.Setup;

namespace ChannelAudit.Impedance;

/// <summary>Readings between two sites, the only ones that show gel between them.</summary>
internal static class AcrossRules
{
    /// <summary>Each pair of electrodes that was read, with what two free contacts would read.</summary>
    public static ImmutableArray<AcrossImpedance> All(ImmutableArray<LoggedReading> readings, ImmutableArray<SiteImpedance> sites) =>
    [
        .. readings.Where(reading => reading.Pair == ImpedancePair.Across)
            .GroupBy(reading => reading.PairCode, StringComparer.Ordinal)
            .OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => Of([.. group], sites)),
    ];

    /// <summary>The warning of a reading that says so.</summary>
    public static ImpedanceWarning Joined(AcrossImpedance across)
    {
        (LoggedReading reading, double? expected) = (across.Reading, across.ExpectedKohm);
        string instead = expected is { } sum ? $", though the two contacts make {ImpedanceWords.Kohm(sum)}" : string.Empty;
        return new ImpedanceWarning(
            ImpedanceWarningCode.SitesJoined,
            [reading.From.Site, reading.To.Site],
            $"{reading.From} to {reading.To} reads {ImpedanceWords.Kohm(reading.Kohm)}{instead}: gel may join the two sites",
            "look for gel between the two sites, wipe it away from the eye, renew one site if need be, measure across again");
    }

    /// <summary>Neighbours by the setup without a reading across them.</summary>
    public static ImmutableArray<(string One, string Other)> NotRead(StudySetup setup, ImmutableArray<AcrossImpedance> across) =>
    [
        .. setup.Sites.SelectMany((site, i) => setup.Sites.Skip(i + 1)
            .Where(other => AreNeighbours(site, other) && !across.Any(read => IsBetween(read.Reading, site.Name, other.Name)))
            .Select(other => (site.Name, other.Name))),
    ];

    private static AcrossImpedance Of(ImmutableArray<LoggedReading> readings, ImmutableArray<SiteImpedance> sites) =>
        new(readings, Contact(readings[^1], readings[^1].From, sites) + Contact(readings[^1], readings[^1].To, sites));

    private static bool AreNeighbours(SiteSetup one, SiteSetup other) =>
        one.Adjacent.Contains(other.Name, StringComparer.Ordinal) || other.Adjacent.Contains(one.Name, StringComparer.Ordinal);

    private static bool IsBetween(LoggedReading reading, string one, string other) =>
        (Is(reading.From.Site, one) && Is(reading.To.Site, other)) || (Is(reading.From.Site, other) && Is(reading.To.Site, one));

    private static bool Is(string one, string other) => string.Equals(one, other, StringComparison.Ordinal);

    // Only of a site that was read in the same phase: a contact that was made anew since is another one.
    private static double? Contact(LoggedReading reading, SiteElectrode end, ImmutableArray<SiteImpedance> sites) =>
        sites.First(site => Is(site.Name, end.Site)) is { Solved: { } solved } known && reading.IsOfPhase(known.Pairs[0].Phase)
            ? Math.Max(0, end.IsSecond ? solved.BKohm : solved.AKohm)
            : null;
}
