using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;

namespace ChannelAudit.Synthesis;

/// <summary>What amplifier inputs see when gel joins electrodes.</summary>
/// <remarks>
/// Derived by hand (voltage divider, Kirchhoff's laws), amplifier input current neglected. Electrode i sees the skin
/// potential e_i through Z_i. With the joints' incidence B (+1 at one end, −1 at the other), the currents through the
/// joints are i = (R + B·Z·Bᵀ)⁻¹·B·e and the inputs see v = e − Z·Bᵀ·i. One joint a2-b1 gives A = x + k_a·d and
/// B = y + k_b·d with d = e_a2 − e_b1 and k = Z/(Z_a2 + Z_b1 + R); one joint a2-ground gives A = x + k·(e_a2 − e_g) with
/// k = Z_a2/(Z_a2 + Z_g + R). Solved by Math.NET's Cholesky factor, whose managed code (no other is shipped) adds in one order everywhere.
/// </remarks>
internal static class ElectrodeNetwork
{
    /// <summary>Pivot in kΩ below which nothing but rounding is left of a joint's way through contacts of kΩ.</summary>
    private const double SmallestPivotKohm = 1e-12;

    /// <summary>The matrix from skin potentials to inputs, row by row.</summary>
    /// <param name="kohm">Impedance of each electrode in kΩ, positive.</param>
    /// <param name="joints">The joined electrodes by index, and the resistance of each joint in kΩ.</param>
    /// <exception cref="ArgumentException">When joints without resistance form a loop: their currents are not defined.</exception>
    internal static double[,] Mixing(ReadOnlySpan<double> kohm, ImmutableArray<(int One, int Other, double Kohm)> joints)
    {
        Matrix<double> mixing = DenseMatrix.CreateIdentity(kohm.Length);
        if (joints.IsEmpty)
        {
            return mixing.ToArray();
        }

        Matrix<double> incidence = Incidence(kohm.Length, joints);
        Matrix<double> drops = DenseMatrix.OfDiagonalArray(kohm.ToArray()) * incidence.Transpose();
        Matrix<double> mesh = DenseMatrix.OfDiagonalArray([.. joints.Select(joint => joint.Kohm)]) + (incidence * drops);
        return (mixing - (drops * Currents(mesh, incidence))).ToArray();
    }

    /// <summary>One row a joint: +1 at its one end, −1 at its other.</summary>
    private static DenseMatrix Incidence(int electrodes, ImmutableArray<(int One, int Other, double Kohm)> joints)
    {
        DenseMatrix incidence = new(joints.Length, electrodes);
        for (int i = 0; i < joints.Length; i++)
        {
            incidence[i, joints[i].One] += 1;
            incidence[i, joints[i].Other] -= 1;
        }

        return incidence;
    }

    /// <summary>Solves mesh·i = B·e for every e that is 1 at one electrode; the mesh matrix is positive definite unless joints form a loop.</summary>
    private static Matrix<double> Currents(Matrix<double> mesh, Matrix<double> incidence)
    {
        try
        {
            var factor = mesh.Cholesky();
            double smallest = factor.Factor.Diagonal().Minimum();
            if (smallest * smallest > SmallestPivotKohm)
            {
                return factor.Solve(incidence);
            }
        }
        catch (ArgumentException)
        {
            // Not positive definite: the same fault, seen earlier.
        }

        throw new ArgumentException("Joints without resistance form a loop.", nameof(mesh));
    }
}
