using System.Collections.Immutable;
using ChannelAudit.Detectability;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Silence;

/// <summary>What silence means in a recording, in words.</summary>
public static class SilenceWords
{
    /// <summary>The heading.</summary>
    public const string Title = "What silence means here";

    /// <summary>A share that counts as found nearly always.</summary>
    public const double Mostly = 0.9;

    /// <summary>A share that counts as found half of the time.</summary>
    public const double Half = 0.5;

    /// <summary>What was done, in a sentence.</summary>
    public static string Done(DetectabilityResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        string used = result.UsedS < result.DurationS
            ? $"the first {Quantities.Clock(result.UsedS)} of {Quantities.Clock(result.DurationS)}"
            : $"all {Quantities.Clock(result.UsedS)}";
        return $"Known faults of rising size, planted where nothing is found as recorded ({used}), audited by the same limits: how often are they found for the right reason?";
    }

    /// <summary>From which size on a share is found: <c>from 2</c>, <c>not even 20</c>.</summary>
    public static string From(DetectedFault fault, double share)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return fault.SizeFoundAt(share) is { } size ? $"from {Quantities.Short(size)}"
            : fault.Points.IsEmpty || fault.Points[^1].Places == 0 ? "n/a"
            : $"not even {Quantities.Short(fault.Points[^1].Size)}";
    }

    /// <summary>The worst size: <c>found 14 of 16 times (64 to 97 in 100), rejected 12</c>.</summary>
    public static string Count(DetectedPoint point)
    {
        ArgumentNullException.ThrowIfNull(point);
        (double low, double high) = point.FoundInterval;
        return point.Places == 0
            ? "no place has it"
            : $"found {point.Found.Plain()} of {Quantities.Many(point.Places, "time")} ({InHundred(low)} to {InHundred(high)} in 100), rejected {point.Rejected.Plain()}";
    }

    /// <summary>The faults that were planted.</summary>
    public static ImmutableArray<DetectedFault> Planted(DetectabilityResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return [.. result.Faults.Where(fault => fault.NotAssessed is null)];
    }

    /// <summary>Those that were not.</summary>
    public static ImmutableArray<DetectedFault> NotPlanted(DetectabilityResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return [.. result.Faults.Where(fault => fault.NotAssessed is not null)];
    }

    /// <summary>The name of a fault that was not planted.</summary>
    public static string NameOf(DetectedFault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return fault.Unit.Length == 0 ? ReasonWords.For(fault.Reason).Name : fault.Title;
    }

    private static string InHundred(double share) => ((int)Math.Round(100 * share)).Plain();
}
