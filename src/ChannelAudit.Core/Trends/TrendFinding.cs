using System.Collections.Immutable;
using ChannelAudit.Signals.Trends;

namespace ChannelAudit.Trends;

/// <summary>A change in one line.</summary>
public sealed record TrendFinding
{
    /// <summary>The line.</summary>
    public required TrendLine Line { get; init; }

    /// <summary>How it changed.</summary>
    public required ChangeKind Kind { get; init; }

    /// <summary>Monday of the week in which it began.</summary>
    public required DateOnly From { get; init; }

    /// <summary>Monday of the week in which an episode was over or a drift had arrived; null for what goes on, and for a step.</summary>
    public DateOnly? To { get; init; }

    /// <summary>The last day that the line has a value.</summary>
    public required DateOnly Last { get; init; }

    /// <summary>The level before it, in the unit of the measure.</summary>
    public required double Before { get; init; }

    /// <summary>The level after it; of an episode the level while it lasted.</summary>
    public required double After { get; init; }

    /// <summary>The probability of as much where nothing changes, for this line alone.</summary>
    public required double P { get; init; }

    /// <summary>The same, corrected for how many lines were looked at.</summary>
    public required double CorrectedP { get; init; }

    /// <summary>Correlation of neighbouring weeks that the probability allows for.</summary>
    public required double Correlation { get; init; }

    /// <summary>The line by weeks, with its control chart.</summary>
    public required TrendChart Chart { get; init; }

    /// <summary>The weeks, middle value or share, of those that it is held against, on the scale that lines are looked at: other electrodes of its sites, other sites or amplifiers of its lab, other labs.</summary>
    public ImmutableArray<(DateOnly Week, double Middle)> Others { get; init; } = [];

    /// <summary>The measure.</summary>
    public TrendMeasure Measure => Line.Measure;

    /// <summary>Whether it is large enough to be told.</summary>
    public bool Matters => Measure.Matters(Measure.Scale == TrendScale.Level ? Math.Log(After / Before) : After - Before);

    /// <summary>Whether it went up.</summary>
    public bool IsUp => After > Before;

    /// <summary>Whether it is bad news; null when neither.</summary>
    public bool? IsWorse => Measure.MoreIsWorse is { } worse ? IsUp == worse : null;

    /// <summary>The end of the time in which the level is another one.</summary>
    public DateOnly Until => Kind == ChangeKind.Episode && To is { } to ? to : Last;

    /// <summary>Whether two changes are of one time: they share at least half of the shorter.</summary>
    public bool IsBeside(TrendFinding other)
    {
        ArgumentNullException.ThrowIfNull(other);
        int from = Math.Max(From.DayNumber, other.From.DayNumber);
        int to = Math.Min(Until.DayNumber, other.Until.DayNumber);
        int shorter = Math.Min(Until.DayNumber - From.DayNumber, other.Until.DayNumber - other.From.DayNumber);
        return 2 * (to - from) >= shorter;
    }
}
