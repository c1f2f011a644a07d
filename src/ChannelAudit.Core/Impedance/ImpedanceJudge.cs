using System.Collections.Immutable;
using ChannelAudit.Setup;

namespace ChannelAudit.Impedance;

/// <summary>Makes a report of readings: each site on its own, then what takes several sites to see.</summary>
internal static class ImpedanceJudge
{
    private static readonly ImpedancePair[] Pairs = [ImpedancePair.AToB, ImpedancePair.AToGround, ImpedancePair.BToGround];

    /// <summary>See <see cref="ImpedanceReport.Of"/>.</summary>
    public static ImpedanceReport Judge(ImpedanceLog log, StudySetup setup)
    {
        if (log.Recordings.Length > 1)
        {
            throw new ArgumentException("Readings of one recording are needed.", nameof(log));
        }

        ImmutableArray<SiteImpedance> sites = [.. SiteNames(log, setup).Select(name => SiteOf(name, log.Readings, ElectrodesOf(name, setup)))];
        sites = [.. sites.Select(site => site with { Warnings = SiteRules.Warnings(site) })];
        ImmutableArray<AcrossImpedance> across = AcrossRules.All(log.Readings, sites);
        (double Least, double Most)? ground = GroundRule.Spread(sites);
        ImmutableArray<ImpedanceWarning> warnings =
        [
            .. UnitRule.Warnings(log.Readings),
            .. across.Where(reading => reading.SaysJoined).Select(AcrossRules.Joined),
            .. GroundRule.Warnings(sites),
            .. sites.SelectMany(site => site.Warnings),
        ];
        warnings = [.. warnings.OrderBy(warning => warning.Code)];
        return new ImpedanceReport
        {
            FileName = log.FileName,
            Sha256 = log.Sha256,
            Sites =
            [
                .. sites.Select(site => site with { Warnings = [.. warnings.Where(warning => warning.Sites.Contains(site.Name, StringComparer.Ordinal))] }),
            ],
            Across = across,
            NotReadAcross = AcrossRules.NotRead(setup, across),
            Warnings = warnings,
            Ground = ground,
            LatestAt = log.HasTimes ? log.Readings[^1].Time : null,
            IsAfterTheSession = !log.Readings.IsEmpty && log.Readings[^1].IsAfter,
        };
    }

    private static IEnumerable<string> SiteNames(ImpedanceLog log, StudySetup setup) => setup.Sites.IsEmpty
        ? log.Readings.SelectMany(reading => new[] { reading.From, reading.To }).Where(end => !end.IsGround)
            .Select(end => end.Site).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
        : setup.Sites.Select(site => site.Name);

    private static ImmutableArray<string> ElectrodesOf(string name, StudySetup setup) =>
        setup.Sites.FirstOrDefault(site => string.Equals(site.Name, name, StringComparison.Ordinal))?.Electrodes ?? [];

    private static SiteImpedance SiteOf(string name, ImmutableArray<LoggedReading> readings, ImmutableArray<string> electrodes)
    {
        ILookup<ImpedancePair, LoggedReading> own = readings
            .Where(reading => reading.Pair != ImpedancePair.Across && string.Equals(reading.Site, name, StringComparison.Ordinal))
            .ToLookup(reading => reading.Pair);
        ImmutableArray<PairImpedance> pairs =
            [.. Pairs.Select(pair => new PairImpedance(pair, own.Contains(pair) ? new ImpedanceCourse([.. own[pair]]) : null))];
        SiteImpedance site = new() { Name = name, Electrodes = electrodes, Pairs = pairs };
        return SiteRules.AreTogether(site) ? site with { Solved = SolvedImpedance.Of(SiteRules.Triple(site)) } : site;
    }
}
