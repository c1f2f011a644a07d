using System.Collections.Immutable;

namespace ChannelAudit.Findings.Bridges;

/// <summary>Which electrodes of two sites the signs allow to be joined, and whether the sizes fit one joint or two.</summary>
/// <remarks>
/// Without a remote source the share of a joint between unlike ends (second of the one, first of the other) is negative and that between like ends positive; two
/// parallel joints are positive, two crossed ones negative. One joint hands on a third of a contraction at most, and shows at most a third as correlation of electrode
/// noise between like contacts; two hand on half and more while the gel's resistance is no larger than the contacts' (<see cref="JoinedElectrodes"/>). Nothing here is
/// proof: a remote source is positive everywhere, and signs that differ between rest and contractions say that more than gel is at work.
/// </remarks>
internal static class LikelyJoint
{
    private const double LeastRest = 0.12;
    private const double LeastActive = 0.5;
    private const double Tolerance = 0.03;

    // Half-way between the most that one joint hands on and the least that two do while their gel is no worse than the contacts.
    private static readonly double LeastGainOfTwo = (JoinedElectrodes.GainOne(0) + JoinedElectrodes.GainBoth(1)) / 2;

    // Contacts of 1 and 20 kOhm give one joint 0.48; two of no resistance give 0.8 and more.
    private const double LeastHighOfTwo = 0.5;

    /// <summary>The sentence, without its full stop; null when nothing was found.</summary>
    public static string Of(BridgeCase found, BridgeMedians medians)
    {
        if (found.IsShared)
        {
            return "every other channel shares it alike, so the sign does not tell which electrodes are joined";
        }

        ImmutableArray<int> signs = Signs(medians);
        return signs.Length != 1
            ? "the signs at rest and in contractions differ, so a remote source or tissue has a part in it and they do not tell which electrodes are joined"
            : Words(found, signs[0], JointsOf(medians));
    }

    /// <summary>How many joints the sizes fit: 1, 2, or null when they fit both.</summary>
    public static int? JointsOf(BridgeMedians medians)
    {
        double? gain = medians.GainActive is { } both ? Math.Abs(both) : null;
        double? high = medians.RhoHighRest is { } rho ? Math.Abs(rho) : null;
        if (gain >= LeastGainOfTwo || high >= LeastHighOfTwo)
        {
            return 2;
        }

        double most = JoinedElectrodes.GainOne(0) + Tolerance;
        return (gain is not null || high is not null) && (gain ?? 0) <= most && (high ?? 0) <= most ? 1 : null;
    }

    private static ImmutableArray<int> Signs(BridgeMedians medians) =>
    [
        .. new (double? Value, double Least)[]
        {
            (medians.RhoHighRest, LeastRest), (medians.RhoRest, LeastRest), (medians.RhoActiveA, LeastActive), (medians.RhoActiveB, LeastActive),
        }.Where(one => Math.Abs(one.Value ?? 0) >= one.Least).Select(one => Math.Sign(one.Value!.Value)).Distinct(),
    ];

    private static string Words(BridgeCase found, int sign, int? joints)
    {
        (bool isNamed, string[] a, string[] b) = Names(found);
        string Joint(int i, int j) => isNamed ? $"{a[i]}-{b[j]}" : $"the {a[i]} with the {b[j]}";
        (string one, string other) = sign > 0 ? (Joint(0, 0), Joint(1, 1)) : (Joint(1, 0), Joint(0, 1));
        string remote = sign > 0 ? " (a remote source has this sign too)" : string.Empty;
        return joints switch
        {
            1 => $"the sign fits {one} or {other}{remote}; the sizes fit one joint, or two behind more gel than the contacts' own resistance",
            2 => $"the sign fits {one} and {other}{remote}; the sizes fit two joints",
            _ => $"the sign fits {one} or {other}{remote}; the sizes do not tell one joint from two",
        };
    }

    private static (bool IsNamed, string[] A, string[] B) Names(BridgeCase found) =>
        found is { ElectrodesA.Length: 2, ElectrodesB.Length: 2 }
            ? (true, [.. found.ElectrodesA], [.. found.ElectrodesB])
            : (false, [$"first electrode of {found.NameA}", $"second electrode of {found.NameA}"], [$"first of {found.NameB}", $"second of {found.NameB}"]);
}
