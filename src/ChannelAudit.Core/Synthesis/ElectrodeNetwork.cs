using System.Collections.Immutable;

namespace ChannelAudit.Synthesis;

/// <summary>What amplifier inputs see when gel joins electrodes.</summary>
/// <remarks>
/// Derived by hand (voltage divider, Kirchhoff's laws), amplifier input current neglected. Electrode i sees the skin
/// potential e_i through Z_i. With the joints' incidence B (+1 at one end, −1 at the other), the currents through the
/// joints are i = (R + B·Z·Bᵀ)⁻¹·B·e and the inputs see v = e − Z·Bᵀ·i. One joint a2-b1 gives A = x + k_a·d and
/// B = y + k_b·d with d = e_a2 − e_b1 and k = Z/(Z_a2 + Z_b1 + R).
/// </remarks>
internal static class ElectrodeNetwork
{
    /// <summary>The matrix from skin potentials to inputs, row by row.</summary>
    /// <param name="kohm">Impedance of each electrode in kΩ, positive.</param>
    /// <param name="joints">The joined electrodes by index, and the resistance of each joint in kΩ.</param>
    /// <exception cref="ArgumentException">When joints without resistance form a loop: their currents are not defined.</exception>
    internal static double[,] Mixing(ReadOnlySpan<double> kohm, ImmutableArray<(int One, int Other, double Kohm)> joints)
    {
        int electrodes = kohm.Length;
        double[,] currents = CurrentsPerPotential(kohm, joints);
        double[,] mixing = new double[electrodes, electrodes];
        for (int row = 0; row < electrodes; row++)
        {
            mixing[row, row] = 1;
            for (int j = 0; j < joints.Length; j++)
            {
                double drop = kohm[row] * Sign(joints[j], row);
                for (int column = 0; drop != 0 && column < electrodes; column++)
                {
                    mixing[row, column] -= drop * currents[j, column];
                }
            }
        }

        return mixing;
    }

    /// <summary>Solves (R + B·Z·Bᵀ)·i = B·e for every e that is 1 at one electrode, by Gauss-Jordan elimination.</summary>
    private static double[,] CurrentsPerPotential(
        ReadOnlySpan<double> kohm, ImmutableArray<(int One, int Other, double Kohm)> joints)
    {
        int count = joints.Length;
        double[,] mesh = new double[count, count];
        double[,] drive = new double[count, kohm.Length];
        for (int i = 0; i < count; i++)
        {
            mesh[i, i] = joints[i].Kohm;
            for (int electrode = 0; electrode < kohm.Length; electrode++)
            {
                drive[i, electrode] = Sign(joints[i], electrode);
                for (int j = 0; j < count; j++)
                {
                    mesh[i, j] += Sign(joints[i], electrode) * kohm[electrode] * Sign(joints[j], electrode);
                }
            }
        }

        for (int i = 0; i < count; i++)
        {
            Eliminate(mesh, drive, i);
        }

        return drive;
    }

    /// <summary>Clears one column; the mesh matrix is positive definite, so its diagonal needs no exchange of rows.</summary>
    private static void Eliminate(double[,] mesh, double[,] drive, int pivot)
    {
        double divisor = mesh[pivot, pivot];
        if (!(divisor > 1e-12))
        {
            throw new ArgumentException("Joints without resistance form a loop.", nameof(mesh));
        }

        Scale(mesh, pivot, 1 / divisor);
        Scale(drive, pivot, 1 / divisor);
        for (int row = 0; row < mesh.GetLength(0); row++)
        {
            double factor = mesh[row, pivot];
            if (row != pivot && factor != 0)
            {
                Subtract(mesh, row, pivot, factor);
                Subtract(drive, row, pivot, factor);
            }
        }
    }

    private static void Scale(double[,] matrix, int row, double factor)
    {
        for (int column = 0; column < matrix.GetLength(1); column++)
        {
            matrix[row, column] *= factor;
        }
    }

    private static void Subtract(double[,] matrix, int row, int other, double factor)
    {
        for (int column = 0; column < matrix.GetLength(1); column++)
        {
            matrix[row, column] -= factor * matrix[other, column];
        }
    }

    private static int Sign((int One, int Other, double Kohm) joint, int electrode) =>
        electrode == joint.One ? 1 : electrode == joint.Other ? -1 : 0;
}
