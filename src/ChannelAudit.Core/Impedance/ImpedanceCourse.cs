using System.Collections.Immutable;

namespace ChannelAudit.Impedance;

/// <summary>How the readings of one pair went: with every preparation of the site, from the first to the latest.</summary>
/// <param name="Readings">All of them in order of time, one and more.</param>
public sealed record ImpedanceCourse(ImmutableArray<LoggedReading> Readings)
{
    /// <summary>The first one.</summary>
    public LoggedReading First => Readings[0];

    /// <summary>The latest one: the one that is graded.</summary>
    public LoggedReading Latest => Readings[^1];

    /// <summary>
    /// What the latest one is compared with: after the session the last one before it, else the first of the same phase; null when there is none.
    /// </summary>
    public LoggedReading? Reference
    {
        get
        {
            LoggedReading latest = Latest;
            LoggedReading? reference = latest.IsAfter
                ? Readings.LastOrDefault(reading => !reading.IsAfter)
                : Readings.First(reading => reading.IsOfPhase(latest.Phase));
            return ReferenceEquals(reference, latest) ? null : reference;
        }
    }

    /// <summary>Change from the first to the latest reading, in % of the first; null when there is one reading only or the first is 0.</summary>
    public double? ChangePercent => Readings.Length < 2 || First.Kohm == 0 ? null : 100 * ((Latest.Kohm / First.Kohm) - 1);

    /// <summary>Minutes since <see cref="Reference"/>, or null without times.</summary>
    public double? MinutesSinceReference => Reference?.Time is { } from && Latest.Time is { } to ? from.MinutesTo(to) : null;

    /// <summary>Whether the contact has become another one since <see cref="Reference"/>: more than twice as high, or less than half.</summary>
    public bool HasDrifted => Reference is { } from
        && Math.Abs(Latest.Kohm - from.Kohm) > ImpedanceLimits.SmallDifferenceKohm
        && Math.Max(Latest.Kohm, from.Kohm) > ImpedanceLimits.DriftRatio * Math.Min(Latest.Kohm, from.Kohm);
}
