using System.Collections.Immutable;

namespace ChannelAudit.Trends;

/// <summary>One value of one measure.</summary>
/// <param name="Session">Position of its recording among those in order of time.</param>
/// <param name="Day">Its day.</param>
/// <param name="Lab">Its lab.</param>
/// <param name="Amplifier">Its amplifier.</param>
/// <param name="Site">Its site.</param>
/// <param name="Electrodes">The electrodes it is about: two, one, or none known.</param>
/// <param name="Raw">The value in the unit of the measure; 0 or 1 for a share.</param>
public sealed record TrendValue(int Session, DateOnly Day, string? Lab, string? Amplifier, string Site, ImmutableArray<string> Electrodes, double Raw)
{
    private const double LeastLevel = 1e-3;

    /// <summary>The week, Mondays first, counted from the first of the calendar.</summary>
    public int Week => Day.DayNumber / 7;

    /// <summary>The value on the scale that lines are looked at.</summary>
    public double On(TrendScale scale) => scale == TrendScale.Level ? Math.Log(Math.Max(Raw, LeastLevel)) : Raw;

    /// <summary>Whether a subject covers it.</summary>
    public bool IsOf(TrendSubject subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return subject.By == TrendBy.Archive || (string.Equals(Lab, subject.Lab, StringComparison.Ordinal) && subject.By switch
        {
            TrendBy.Lab => true,
            TrendBy.Amplifier => string.Equals(Amplifier, subject.Name, StringComparison.Ordinal),
            TrendBy.Site => string.Equals(Site, subject.Name, StringComparison.Ordinal),
            _ => Electrodes.Contains(subject.Name, StringComparer.Ordinal),
        });
    }

    /// <summary>All values of a measure.</summary>
    /// <param name="sessions">Recordings in order of time, each with a day.</param>
    /// <param name="measure">The measure.</param>
    public static ImmutableArray<TrendValue> Of(ImmutableArray<TrendSession> sessions, TrendMeasure measure)
    {
        ImmutableArray<TrendValue>.Builder values = ImmutableArray.CreateBuilder<TrendValue>();
        for (int i = 0; i < sessions.Length; i++)
        {
            foreach (TrendChannel channel in sessions[i].Channels)
            {
                foreach ((ImmutableArray<string> electrodes, double? raw) in Raws(channel, measure))
                {
                    if (raw is { } number)
                    {
                        values.Add(new TrendValue(i, sessions[i].Day!.Value, sessions[i].Lab, sessions[i].Amplifier, channel.Site, electrodes, number));
                    }
                }
            }
        }

        return values.ToImmutable();
    }

    private static IEnumerable<(ImmutableArray<string> Electrodes, double? Raw)> Raws(TrendChannel channel, TrendMeasure measure)
    {
        if (measure == TrendMeasure.Contact)
        {
            bool isKnown = channel.Electrodes.Length == 2;
            return [(isKnown ? [channel.Electrodes[0]] : [], channel.FirstKohm), (isKnown ? [channel.Electrodes[1]] : [], channel.SecondKohm)];
        }

        return [(channel.Electrodes, One(channel, measure))];
    }

    private static double? One(TrendChannel channel, TrendMeasure measure) =>
        measure == TrendMeasure.NotPassed ? Yes(channel.IsNotPassed)
        : measure == TrendMeasure.Rest ? channel.RestUv
        : measure == TrendMeasure.Mains ? channel.MainsUv
        : measure == TrendMeasure.Bridge ? Yes(channel.IsBridged)
        : measure == TrendMeasure.Impedance ? channel.PairKohm
        : channel.FallPercent;

    private static double? Yes(bool? isSo) => isSo is { } known ? known ? 1 : 0 : null;
}
