using System.Collections.Immutable;

namespace ChannelAudit.Synthesis;

/// <summary>What an impedance meter shows between electrodes of a plan, the gel that joins some of them included.</summary>
/// <remarks>
/// A current into an electrode lifts it through the same network that carries its skin potential to the input, so the impedances seen
/// from outside are mixing matrix times electrode impedances, and a reading between i and j is Z_ii + Z_jj − Z_ij − Z_ji. Derived by hand; the
/// nodal values of the project's table of bridges and readings (methods 1.13) hold it. Magnitudes only, no noise of the meter.
/// </remarks>
public static class ImpedanceMeter
{
    /// <summary>The three standard readings of every site, in the order of the plan: the pair, and each electrode against the ground.</summary>
    /// <param name="plan">The plan; all its joints count, whatever their stretch.</param>
    /// <exception cref="ArgumentException">When joints without resistance form a loop.</exception>
    public static ImmutableArray<ImpedanceReading> StandardReadings(SessionPlan plan)
    {
        double[,] seen = SeenFromOutside(plan);
        int ground = 2 * plan.Sites.Length;
        return
        [
            .. plan.Sites.SelectMany((site, i) => new[]
            {
                new ImpedanceReading(site.Name, "a-b", Between(seen, 2 * i, (2 * i) + 1)),
                new ImpedanceReading(site.Name, "a-ground", Between(seen, 2 * i, ground)),
                new ImpedanceReading(site.Name, "b-ground", Between(seen, (2 * i) + 1, ground)),
            }),
        ];
    }

    /// <summary>The fourth reading: from an electrode of one site to one of another, which alone shows gel between them.</summary>
    /// <param name="plan">The plan; all its joints count, whatever their stretch.</param>
    /// <param name="one">An electrode.</param>
    /// <param name="other">An electrode of another site.</param>
    /// <exception cref="ArgumentException">When the plan has no such site, or joints without resistance form a loop.</exception>
    public static ImpedanceReading Across(SessionPlan plan, Electrode one, Electrode other) => new(
        one.Site, $"{Name(one)}-{Name(other)}", Between(SeenFromOutside(plan), ElectrodeStage.Number(plan, one), ElectrodeStage.Number(plan, other)));

    private static string Name(Electrode electrode) => electrode.IsGround ? "ground" : $"{electrode.Site}.{(electrode.IsSecond ? 'b' : 'a')}";

    private static double Between(double[,] seen, int one, int other) =>
        seen[one, one] + seen[other, other] - seen[one, other] - seen[other, one];

    private static double[,] SeenFromOutside(SessionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        double[] kohm = ElectrodeStage.Impedances(plan);
        ImmutableArray<ElectrodeJoint> joints = [.. plan.Faults.SelectMany(fault => fault.Joints)];
        double[,] seen = ElectrodeNetwork.Mixing(kohm, ElectrodeStage.Numbered(plan, joints));
        for (int row = 0; row < kohm.Length; row++)
        {
            for (int column = 0; column < kohm.Length; column++)
            {
                seen[row, column] *= kohm[column];
            }
        }

        return seen;
    }
}
