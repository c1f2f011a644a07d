namespace ChannelAudit.Impedance;

/// <summary>How the readings of one pair went: with every preparation of the site, from the first line to the last.</summary>
/// <param name="Readings">How many there are, 1 and more.</param>
/// <param name="First">The first one.</param>
/// <param name="Reference">
/// What the latest one is compared with: after the session the last one before it, else the first of the same phase; null when there is none.
/// </param>
/// <param name="Latest">The latest one.</param>
public sealed record ImpedanceCourse(int Readings, LoggedReading First, LoggedReading? Reference, LoggedReading Latest)
{
    /// <summary>Change from the first to the latest reading, in % of the first; null when there is one reading only or the first is 0.</summary>
    public double? ChangePercent => Readings < 2 || First.Kohm == 0 ? null : 100 * ((Latest.Kohm / First.Kohm) - 1);

    /// <summary>Minutes since <see cref="Reference"/>, or null without times.</summary>
    public double? MinutesSinceReference => Reference?.Time is { } from && Latest.Time is { } to ? from.MinutesTo(to) : null;

    /// <summary>Whether the contact has become another one since <see cref="Reference"/>: more than twice as high, or less than half.</summary>
    public bool HasDrifted => Reference is { } from
        && Math.Abs(Latest.Kohm - from.Kohm) > ImpedanceLimits.SmallDifferenceKohm
        && Math.Max(Latest.Kohm, from.Kohm) > ImpedanceLimits.DriftRatio * Math.Min(Latest.Kohm, from.Kohm);

    /// <summary>Follows the readings of one pair.</summary>
    /// <param name="readings">In order of time, one and more.</param>
    internal static ImpedanceCourse Of(IReadOnlyList<LoggedReading> readings)
    {
        LoggedReading latest = readings[^1];
        LoggedReading? reference = latest.IsAfter
            ? readings.LastOrDefault(reading => !reading.IsAfter)
            : readings.First(reading => reading.IsOfPhase(latest.Phase));
        return new ImpedanceCourse(readings.Count, readings[0], ReferenceEquals(reference, latest) ? null : reference, latest);
    }
}
