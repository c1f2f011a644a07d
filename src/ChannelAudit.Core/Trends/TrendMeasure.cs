using System.Collections.Immutable;

namespace ChannelAudit.Trends;

/// <summary>What is followed over time.</summary>
/// <param name="Code">The word in tables.</param>
/// <param name="Unit">The unit; <c>1</c> for a share.</param>
/// <param name="Scale">How values are compared.</param>
/// <param name="LeastChange">
/// A smaller change is no finding, however sure: of a level the ratio, of a share the difference, else the difference in the unit. Engineering judgement: what a lab would act on.
/// </param>
/// <param name="MoreIsWorse">Whether a rise is bad news; null: neither is.</param>
public sealed record TrendMeasure(string Code, string Unit, TrendScale Scale, double LeastChange, bool? MoreIsWorse)
{
    /// <summary>Channels whose computed verdict is not pass.</summary>
    public static TrendMeasure NotPassed { get; } = new("not_passed", "1", TrendScale.Share, 0.05, true);

    /// <summary>Amplitude in the band at rest.</summary>
    public static TrendMeasure Rest { get; } = new("rest_rms", "uV", TrendScale.Level, 1.15, true);

    /// <summary>Mains and its harmonics.</summary>
    public static TrendMeasure Mains { get; } = new("line_rms", "uV", TrendScale.Level, 1.15, true);

    /// <summary>Channels that are joined with another, or may be.</summary>
    public static TrendMeasure Bridge { get; } = new("bridge", "1", TrendScale.Share, 0.03, true);

    /// <summary>The reading between the two electrodes of a site before the session, the latest.</summary>
    public static TrendMeasure Impedance { get; } = new("impedance", "kohm", TrendScale.Level, 1.15, true);

    /// <summary>What one electrode takes part with in it, as solved from the three readings of the site.</summary>
    public static TrendMeasure Contact { get; } = new("contact", "kohm", TrendScale.Level, 1.15, true);

    /// <summary>How much the reading fell from the first to the latest before the session.</summary>
    public static TrendMeasure Fall { get; } = new("impedance_fall", "%", TrendScale.Difference, 5, null);

    /// <summary>All, in the order of tables.</summary>
    public static ImmutableArray<TrendMeasure> All { get; } = [NotPassed, Rest, Mains, Bridge, Impedance, Contact, Fall];

    /// <summary>Whether a change is large enough to be told.</summary>
    /// <param name="change">On the scale that lines are looked at: of a level the difference of logarithms.</param>
    public bool Matters(double change) => Math.Abs(change) >= (Scale == TrendScale.Level ? Math.Log(LeastChange) : LeastChange);
}
