using System.Globalization;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Bridges;

/// <summary>Says in a sentence or two why two channels are called joined, suspected, or neither.</summary>
internal static class BridgeReasoning
{
    private const double LeastShared = 0.5;

    /// <summary>The reasoning.</summary>
    /// <param name="found">The pair.</param>
    /// <param name="worst">What was decided.</param>
    /// <param name="notAssessed">Why a bridge could not be judged, or null.</param>
    public static string Of(BridgeCase found, Grade worst, string? notAssessed)
    {
        if (worst > Grade.Pass)
        {
            return Reached(found, worst);
        }

        if (notAssessed is not null)
        {
            return $"It could not be judged: {notAssessed}.";
        }

        return found.IsCommonSource ? "Every other channel shares it alike: a common source such as the ground or a remote muscle, not gel between these two."
            : Math.Abs(found.Whole.ImaginaryRest ?? 0) > BridgeDecision.MostImaginary ? "One channel follows the other with a delay; what is joined is simultaneous."
            : NotReached(found);
    }

    private static string Reached(BridgeCase found, Grade worst)
    {
        (BridgeMedians medians, BridgeDecision decision) = found.Deciding(worst);
        string part = decision == found.Decision ? string.Empty : "In this part: ";
        string numbers = string.Join("; ", decision.Evidence.Select(Words));
        string ending = worst == Grade.Reject
            ? "Crosstalk through tissue does not reach this."
            : "Two bipolar channels cannot prove a single joined electrode, so it is suspected only.";
        return $"{part}{(part.Length == 0 ? Capital(numbers) : numbers)}. {ending} {Capital(LikelyJoint.Of(found, medians))}.";
    }

    private static string NotReached(BridgeCase found)
    {
        double rest = Math.Abs(found.Whole.RhoHighRest ?? found.Whole.RhoRest ?? 0);
        string where = found.Whole.RhoHighRest is null ? "at rest" : "at rest above 300 Hz";
        string least = found.Whole.RhoHighRest is not null && LeastHigh(found) is { } limit ? $", below {Number(limit)}" : string.Empty;
        double contraction = Math.Max(Math.Abs(found.Whole.RhoActiveA ?? 0), Math.Abs(found.Whole.RhoActiveB ?? 0));
        return contraction >= LeastShared
            ? $"In contractions the correlation is {Number(contraction)}, but {where} only {Number(rest)}{least}: tissue carries the neighbour's muscle without its high frequencies, gel carries all."
            : $"The correlation is {Number(rest)} {where}{least}, and {Number(contraction)} in contractions.";
    }

    private static double? LeastHigh(BridgeCase found) => found.Limits
        .Where(limit => string.Equals(limit.Measure, "rho_high_rest", StringComparison.Ordinal))
        .Select(limit => (double?)limit.Value)
        .Min();

    private static string Words(Evidence evidence)
    {
        string value = string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(evidence.Value):0.00} (limit {evidence.Limit:0.00})");
        return evidence.Measure switch
        {
            "rho_rest" => $"correlation at rest {value}",
            "rho_high_rest" => $"above 300 Hz, where crosstalk has died away, {value}",
            "rho_active" => $"in the contractions of both at least {value}",
            "gain_active" => $"part of a contraction that arrives at the other site {value}",
            _ => $"{evidence.Measure} {value}",
        };
    }

    private static string Number(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
