using System.Collections.Immutable;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Results;

/// <summary>What the verdicts of a recording would be if limits were others.</summary>
/// <param name="Reason">The reason whose limits are moved, or <see cref="AllReasons"/>.</param>
/// <param name="Factor">How much more fault the moved limits tolerate; 1 for the limits in force.</param>
/// <param name="Trials">The trials by verdict, each counted once a channel.</param>
/// <param name="Channels">The channels by verdict.</param>
public sealed record MovedLimits(string Reason, double Factor, GradeCounts Trials, GradeCounts Channels)
{
    /// <summary>The reason of rows in which all limits are moved together.</summary>
    public const string AllReasons = "all";

    /// <summary>The factors that are tried beside 1, ascending.</summary>
    public static ImmutableArray<double> Factors { get; } = [0.5, 0.75, 1.25, 2];
}
