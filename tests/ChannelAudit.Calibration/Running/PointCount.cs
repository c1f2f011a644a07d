using System.Collections.Immutable;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Calibration.Running;

/// <summary>What came of all recordings of one fault, one severity and one generator.</summary>
public sealed record PointCount
{
    /// <summary>Nothing yet.</summary>
    public static PointCount Empty { get; } = new();

    /// <summary>Recordings.</summary>
    public int Recordings { get; init; }

    /// <summary>Trial-channels that the fault meets.</summary>
    public int Faulty { get; init; }

    /// <summary>Of these, at least questionable for the right reason.</summary>
    public int Found { get; init; }

    /// <summary>Of these, rejected for the right reason.</summary>
    public int Rejected { get; init; }

    /// <summary>Trial-channels that it does not meet.</summary>
    public int Other { get; init; }

    /// <summary>Of these, questionable.</summary>
    public int OtherQuestionable { get; init; }

    /// <summary>Of these, rejected.</summary>
    public int OtherRejected { get; init; }

    /// <summary>Reasons of what did not pass and should have, each with the number of trial-channels.</summary>
    public ImmutableSortedDictionary<string, int> FalseReasons { get; init; } = ImmutableSortedDictionary.Create<string, int>(StringComparer.Ordinal);

    /// <summary>Share of the faulty trial-channels that were found, with its interval.</summary>
    public Share FoundShare => Share.Of(Found, Faulty, Recordings);

    /// <summary>Share of the faulty trial-channels that were rejected, with its interval.</summary>
    public Share RejectedShare => Share.Of(Rejected, Faulty, Recordings);

    /// <summary>Both together.</summary>
    public static PointCount operator +(PointCount a, PointCount b) => new()
    {
        Recordings = a.Recordings + b.Recordings,
        Faulty = a.Faulty + b.Faulty,
        Found = a.Found + b.Found,
        Rejected = a.Rejected + b.Rejected,
        Other = a.Other + b.Other,
        OtherQuestionable = a.OtherQuestionable + b.OtherQuestionable,
        OtherRejected = a.OtherRejected + b.OtherRejected,
        FalseReasons = b.FalseReasons.Aggregate(a.FalseReasons, (sum, one) => sum.SetItem(one.Key, sum.GetValueOrDefault(one.Key) + one.Value)),
    };

    /// <summary>Both together.</summary>
    public static PointCount Add(PointCount a, PointCount b) => a + b;
}
