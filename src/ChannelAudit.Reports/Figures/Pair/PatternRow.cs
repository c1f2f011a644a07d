using System.Collections.Immutable;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures.Pair;

/// <summary>One median of a pair, what decides about it, and what to expect of it.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Value">Its value with its sign, or null.</param>
/// <param name="Measure">The name of its limits.</param>
/// <param name="Expected">What a pattern expects of it.</param>
internal sealed record PatternRow(string Label, double? Value, string Measure, Func<BridgePattern, (double From, double To)> Expected)
{
    /// <summary>Whether it is a median at rest; the others are of contractions.</summary>
    public bool IsRest => Measure is "rho_rest" or "rho_high_rest";

    /// <summary>All six.</summary>
    public static ImmutableArray<PatternRow> All(PairSubject subject)
    {
        BridgeEvidence medians = subject.View.Medians;
        return
        [
            .. AtRest(medians),
            new($"correlation, {subject.NameA} contracts", medians.RhoActiveA, "rho_active", pattern => pattern.Contraction),
            new($"correlation, {subject.NameB} contracts", medians.RhoActiveB, "rho_active", pattern => pattern.Contraction),
            new($"share of {subject.NameA} seen at {subject.NameB}", medians.GainAb, "gain_active", pattern => pattern.Gain),
            new($"share of {subject.NameB} seen at {subject.NameA}", medians.GainBa, "gain_active", pattern => pattern.Gain),
        ];
    }

    /// <summary>Four, for a small picture: of the contractions the weaker value, which is the one that decides.</summary>
    public static ImmutableArray<PatternRow> Few(PairSubject subject)
    {
        BridgeEvidence medians = subject.View.Medians;
        return
        [
            .. AtRest(medians),
            new("in contractions", Weaker(medians.RhoActiveA, medians.RhoActiveB), "rho_active", pattern => pattern.Contraction),
            new("share seen at the other", Weaker(medians.GainAb, medians.GainBa), "gain_active", pattern => pattern.Gain),
        ];
    }

    private static PatternRow[] AtRest(BridgeEvidence medians) =>
    [
        new("correlation at rest", medians.RhoRest, "rho_rest", pattern => pattern.Rest),
        new("at rest, above 300 Hz", medians.RhoHighRest, "rho_high_rest", pattern => pattern.HighRest),
    ];

    private static double? Weaker(double? a, double? b) => a is { } first && b is { } second ? (Math.Abs(first) <= Math.Abs(second) ? first : second) : null;
}
