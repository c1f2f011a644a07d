using ChannelAudit.Impedance;
using MathNet.Numerics.LinearAlgebra;

namespace ChannelAudit.Core.Tests.Impedance;

/// <summary>
/// Two sites and a ground on one body, solved by nodes (Kirchhoff's current law): every electrode has a contact to the body,
/// and one bridge may join two of them. Nothing of the star model is used.
/// </summary>
internal sealed class ContactNetwork
{
    private static readonly string[] Electrodes = ["a1", "a2", "b1", "b2", "ground"];

    private readonly Matrix<double> _conductance;

    /// <summary>Contacts of equal kΩ, and a bridge; an infinite one joins nothing.</summary>
    public ContactNetwork(double contactKohm, string from, string to, double bridgeKohm)
    {
        // The body is the reference node, so a contact stands on the diagonal alone.
        _conductance = Matrix<double>.Build.DenseDiagonal(Electrodes.Length, 1 / contactKohm);
        int i = Array.IndexOf(Electrodes, from);
        int j = Array.IndexOf(Electrodes, to);
        _conductance[i, i] += 1 / bridgeKohm;
        _conductance[j, j] += 1 / bridgeKohm;
        _conductance[i, j] -= 1 / bridgeKohm;
        _conductance[j, i] -= 1 / bridgeKohm;
    }

    /// <summary>What a meter reads between two electrodes, in kΩ: the voltage that a unit current from one to the other makes.</summary>
    public double Reading(string from, string to)
    {
        Vector<double> current = Vector<double>.Build.Dense(Electrodes.Length);
        current[Array.IndexOf(Electrodes, from)] = 1;
        current[Array.IndexOf(Electrodes, to)] = -1;
        return current * _conductance.Solve(current);
    }

    /// <summary>The three readings of a site.</summary>
    public ImpedanceTriple Site(string site) =>
        new(Reading(site + "1", site + "2"), Reading(site + "1", "ground"), Reading(site + "2", "ground"));
}
