using ChannelAudit.Impedance;

namespace ChannelAudit.Pilot;

/// <summary>What impedance readings say to somebody who decides what to do next; silent where there are none.</summary>
/// <param name="readings">The readings, or null.</param>
internal sealed class Contacts(ImpedanceReport? readings)
{
    // A reading that is a quarter higher than it was has not settled: it dries.
    private const double RisingTimes = 1.25;

    /// <summary>Whether the ground was read at two sites and more and needs no new contact.</summary>
    public bool IsGroundGood => readings?.Ground is { } ground && ground.MostKohm <= ImpedanceLimits.RedoAboveKohm;

    /// <summary>Whether it is the ground that has to be made again: every reading against it is too high, and none within a pair.</summary>
    public bool IsGroundBad => readings is { IsUnitDoubted: false }
        && readings.Sites.Count(site => site.IsComplete) > 1
        && readings.Sites.Where(site => site.IsComplete).All(site =>
            site[ImpedancePair.AToB].Grade != ImpedanceGrade.Redo
            && site[ImpedancePair.AToGround].Grade == ImpedanceGrade.Redo
            && site[ImpedancePair.BToGround].Grade == ImpedanceGrade.Redo);

    /// <summary>The grade of a site's contacts; a bad ground is not theirs, so the two electrodes count alone then. Null without readings.</summary>
    /// <remarks>Readings that cannot be true, or may be in another unit, ask for a second look at the meter and for nothing else.</remarks>
    public ImpedanceGrade? GradeOf(string site) => readings?.Site(site) is not { } read ? null
        : read.IsDoubted ? ImpedanceGrade.Doubtful
        : IsGroundBad ? read[ImpedancePair.AToB].Grade
        : read.Grade;

    /// <summary>Whether a contact of the site reads higher than it did; readings that are in doubt say nothing of the kind.</summary>
    public bool IsRising(string site) => readings?.Site(site) is { IsDoubted: false } read && read.Pairs.Any(Rises);

    /// <summary>Whether only one of the two electrodes reads higher than it did: rather its lead than its gel.</summary>
    public bool IsRisingAtOne(string site) => IsRising(site) && readings?.Site(site) is { } read
        && Rises(read[ImpedancePair.AToGround]) != Rises(read[ImpedancePair.BToGround]);

    /// <summary>Whether the two electrodes of a site read as joined.</summary>
    public bool IsPairJoined(string site) => readings?.Site(site)?.Warnings.Any(warning => warning.Code == ImpedanceWarningCode.PairJoined) == true;

    /// <summary>Whether a reading across two sites says that something joins them.</summary>
    public bool AreJoined(string one, string other) => readings?.Warnings.Any(warning => warning.Code == ImpedanceWarningCode.SitesJoined
        && warning.Sites.Contains(one, StringComparer.Ordinal) && warning.Sites.Contains(other, StringComparer.Ordinal)) == true;

    /// <summary>When to measure a site again, <c>HH:MM</c>; null when no time was written down.</summary>
    public string? MeasureAgainAt(string site) =>
        readings?.Site(site)?.Pairs.Select(pair => pair.Time).Max(time => time?.Plus(ImpedanceLimits.WaitMinutes).At) is { } at
            ? new ReadingTime(at, HasDate: false).Clock
            : null;

    /// <summary>The pairs of sites that a reading across says are joined, with what was read.</summary>
    public IEnumerable<(string One, string Other, string Seen)> Joined => (readings?.Warnings ?? [])
        .Where(warning => warning.Code == ImpedanceWarningCode.SitesJoined && warning.Sites.Length == 2)
        .Select(warning => (warning.Sites[0], warning.Sites[1], warning.Seen));

    /// <summary>What casts doubt on the readings of a site, or its highest reading; empty without readings.</summary>
    public string Words(string site)
    {
        if (readings?.Site(site) is not { } read)
        {
            return string.Empty;
        }

        PairImpedance? highest = read.Pairs.Where(pair => pair.Kohm is not null && (!IsGroundBad || pair.Pair == ImpedancePair.AToB)).MaxBy(pair => pair.Kohm);
        string rising = IsRising(site) ? ", more than before" : string.Empty;
        return read.Warnings.FirstOrDefault(warning => warning.CastsDoubt)?.Seen
            ?? (highest is null ? string.Empty : $"{ImpedanceWords.Of(highest.Pair, read)} reads {ImpedanceWords.Kohm(highest.Kohm!.Value)}{rising}");
    }

    private static bool Rises(PairImpedance pair) => pair.Course is { Reference: { } from, Latest: var to }
        && to.Kohm > RisingTimes * from.Kohm && to.Kohm - from.Kohm > ImpedanceLimits.SmallDifferenceKohm;
}
