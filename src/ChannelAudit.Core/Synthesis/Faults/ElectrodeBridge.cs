using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>Gel that has run from one electrode to another: of two sites (one or two joints), of the same site, or the ground.</summary>
/// <param name="Paths">The joints; all of them between the same two sites, within one, or one from a site to the ground.</param>
public sealed record ElectrodeBridge(ImmutableArray<ElectrodeJoint> Paths) : Fault
{
    internal override ImmutableArray<ElectrodeJoint> Joints => Paths;

    /// <summary>One joint: the second electrode of a site and the first of its neighbour.</summary>
    /// <param name="site">A site.</param>
    /// <param name="neighbour">Its neighbour.</param>
    /// <param name="kohm">Resistance of the gel in kΩ.</param>
    public static ElectrodeBridge OneNode(string site, string neighbour, double kohm) =>
        new([new ElectrodeJoint(Electrode.Second(site), Electrode.First(neighbour), kohm)]);

    /// <summary>Two parallel joints: first to first, second to second.</summary>
    /// <param name="site">A site.</param>
    /// <param name="neighbour">Its neighbour.</param>
    /// <param name="kohm">Resistance of the gel of each joint in kΩ.</param>
    public static ElectrodeBridge TwoNodes(string site, string neighbour, double kohm) =>
        new(
        [
            new ElectrodeJoint(Electrode.First(site), Electrode.First(neighbour), kohm),
            new ElectrodeJoint(Electrode.Second(site), Electrode.Second(neighbour), kohm),
        ]);

    /// <summary>The two electrodes of one site.</summary>
    /// <param name="site">The site.</param>
    /// <param name="kohm">Resistance of the gel in kΩ.</param>
    public static ElectrodeBridge WithinPair(string site, double kohm) =>
        new([new ElectrodeJoint(Electrode.First(site), Electrode.Second(site), kohm)]);

    /// <summary>An electrode of a site and the ground.</summary>
    /// <param name="electrode">The site's electrode.</param>
    /// <param name="kohm">Resistance of the gel in kΩ.</param>
    public static ElectrodeBridge ToGround(Electrode electrode, double kohm) => new([new ElectrodeJoint(electrode, Electrode.Ground, kohm)]);

    /// <inheritdoc/>
    /// <remarks>
    /// Across sites: the correlation at rest that the electrical model expects; within a pair: what is left of the amplitude; to the ground: the
    /// share k of the potential between electrode and ground that the channel shows on top of its own.
    /// </remarks>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made)
    {
        ArgumentNullException.ThrowIfNull(made);
        ImmutableArray<string> sites =
        [
            .. Paths.SelectMany(joint => new[] { joint.One, joint.Other })
                .Where(electrode => !electrode.IsGround)
                .Select(electrode => electrode.Site)
                .Distinct(StringComparer.Ordinal),
        ];
        ExpectedBridge expected = new(made.Plan, Paths);
        if (Paths.Any(joint => joint.One.IsGround || joint.Other.IsGround))
        {
            return [TruthOf(made, ReasonCode.Bridge, sites, "ground_share", expected.GroundShareOf(sites[0]), "1")];
        }

        return sites.Length == 1
            ? [TruthOf(made, ReasonCode.WeakResponse, sites, "amplitude_gain", expected.GainOf(sites[0]), "1")]
            : [TruthOf(made, ReasonCode.Bridge, sites, "rho", expected.RestCorrelation(sites[0], sites[1]), "1")];
    }
}
