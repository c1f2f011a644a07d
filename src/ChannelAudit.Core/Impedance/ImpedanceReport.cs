using System.Collections.Immutable;
using ChannelAudit.Setup;

namespace ChannelAudit.Impedance;

/// <summary>What the readings of one recording say: sites, readings across them, warnings, when to measure again.</summary>
/// <remarks>
/// Graded apart from the signal: no grade here changes a verdict, and a good reading excuses no bad signal. What was not read is not available, never good.
/// Sources and formulas: <see cref="ImpedanceLimits"/>, <see cref="SolvedImpedance"/>.
/// </remarks>
public sealed record ImpedanceReport
{
    /// <summary>The table of readings.</summary>
    public required string FileName { get; init; }

    /// <summary>SHA-256 of the table's bytes in lower-case hexadecimal.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Sites in the order of the setup, those without readings included; without a setup in ordinal order of their names.</summary>
    public required ImmutableArray<SiteImpedance> Sites { get; init; }

    /// <summary>Readings across two sites, in ordinal order of the pair.</summary>
    public ImmutableArray<AcrossImpedance> Across { get; init; } = [];

    /// <summary>Neighbouring sites by the setup without a reading across them: gel between them cannot be seen in the other readings.</summary>
    public ImmutableArray<(string One, string Other)> NotReadAcross { get; init; } = [];

    /// <summary>All warnings, the most urgent first, then in the order of the sites.</summary>
    public ImmutableArray<ImpedanceWarning> Warnings { get; init; } = [];

    /// <summary>The ground as solved at the sites that tell of it, least and most, in kΩ; null when fewer than two do.</summary>
    public (double LeastKohm, double MostKohm)? Ground { get; init; }

    /// <summary>The time of the latest reading, or null when a reading has none.</summary>
    public ReadingTime? LatestAt { get; init; }

    /// <summary>Whether the unit of the whole table is in doubt: then no reading says anything about skin.</summary>
    public bool IsUnitDoubted => Warnings.Any(warning => warning.Code == ImpedanceWarningCode.UnitInDoubt);

    /// <summary>Whether the latest readings were taken when the session was over.</summary>
    public bool IsAfterTheSession { get; init; }

    /// <summary>The worst grade of a site; null when all that is known is good but a site is not available.</summary>
    public ImpedanceGrade? Grade =>
        Sites.Max(site => site.Grade) is var worst && (worst > ImpedanceGrade.Good || Sites.All(site => site.Grade is not null)) ? worst : null;

    /// <summary>Whether a pair is in the grade that waiting may better, and the participant still there.</summary>
    public bool MeasureAgain => !IsAfterTheSession && Sites.Any(site => site.Pairs.Any(pair => pair.Grade == ImpedanceGrade.Wait));

    /// <summary>
    /// When to measure again: <see cref="ImpedanceLimits.WaitMinutes"/> after the latest reading; null when there is no need, or no time was written
    /// down (then: in that many minutes).
    /// </summary>
    public ReadingTime? MeasureAgainAt => MeasureAgain ? LatestAt?.Plus(ImpedanceLimits.WaitMinutes) : null;

    /// <summary>Judges the readings.</summary>
    /// <param name="log">Readings of one recording (<see cref="ImpedanceLog.For"/>), none allowed.</param>
    /// <param name="setup">Names the sites and their neighbours; one without sites lets those of the readings stand.</param>
    /// <exception cref="ArgumentException">When the readings are of several recordings.</exception>
    public static ImpedanceReport Of(ImpedanceLog log, StudySetup setup) => ImpedanceJudge.Judge(log, setup);

    /// <summary>A site by its name, or null.</summary>
    /// <param name="name">The name.</param>
    public SiteImpedance? Site(string name) => Sites.FirstOrDefault(site => string.Equals(site.Name, name, StringComparison.Ordinal));
}
