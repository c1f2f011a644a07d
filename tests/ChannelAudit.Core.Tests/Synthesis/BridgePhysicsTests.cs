using System.Collections.Immutable;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using MathNet.Numerics.Providers.LinearAlgebra;
using Xunit;

namespace ChannelAudit.Tests.Synthesis;

/// <summary>Joined electrodes against formulas derived by hand (voltage divider, Kirchhoff): the project's check rows 10 to 15.</summary>
public sealed class BridgePhysicsTests
{
    [Theory]
    [InlineData(0, -0.3333)]
    [InlineData(1, -0.3297)]
    [InlineData(5, -0.2857)]
    [InlineData(10, -0.2308)]
    [InlineData(20, -0.1613)]
    [InlineData(50, -0.0827)]
    public void OneJointBetweenNoisyElectrodesGivesTheCorrelationOfTheDivider(double kohm, double expected)
    {
        (double[] a, double[] b) = Run(ElectrodeBridge.OneNode("a", "b", kohm), Noisy("a", 5, 5), Noisy("b", 5, 5));

        Assert.Equal(expected, Plain.Correlation(a, b), 0.01);
    }

    [Fact]
    public void OneJointWithUnequalImpedancesComesNearMinusOneHalf()
    {
        (double[] a, double[] b) = Run(ElectrodeBridge.OneNode("a", "b", 0), Noisy("a", 5, 1), Noisy("b", 20, 5));

        Assert.Equal(-0.4762, Plain.Correlation(a, b), 0.01);
    }

    [Fact]
    public void OneJointBetweenEquallyActiveMusclesGivesMinusPointSix()
    {
        (double[] a, double[] b) = Run(ElectrodeBridge.OneNode("a", "b", 0), Active("a", 25), Active("b", 25));

        Assert.Equal(-0.600, Plain.Correlation(a, b), 0.01);
        Assert.Equal(0.7906, Plain.Rms(a) / 25, 0.01);
    }

    [Theory]
    [InlineData(0, 1 / 3.0, 0.75)]
    [InlineData(5, 0.2, 0.83333333)]
    public void OneJointCarriesTheOnlyActiveMuscleOverToItsNeighbour(double kohm, double carried, double left)
    {
        (double[] a, double[] b) = Run(ElectrodeBridge.OneNode("a", "b", kohm), Active("a", 25), Active("b", 0));
        (double[] free, _) = Run(null, Active("a", 25), Active("b", 0));

        Assert.Equal(-1, Plain.Correlation(a, b), 1e-6);
        Assert.Equal(carried, Plain.Rms(b) / Plain.Rms(a), 1e-6);
        Assert.Equal(left, Plain.Rms(a) / Plain.Rms(free), 1e-6);
    }

    [Theory]
    [InlineData(1, 0.9836, 0.8333)]
    [InlineData(5, 0.8000, 0.5)]
    [InlineData(10, 0.6000, 0.3333)]
    [InlineData(20, 0.3846, 0.2)]
    public void TwoJointsGiveTheCorrelationAndTheGainOfTheDivider(double kohm, double correlation, double carried)
    {
        ElectrodeBridge bridge = ElectrodeBridge.TwoNodes("a", "b", kohm);

        (double[] a, double[] b) = Run(bridge, Active("a", 25), Active("b", 25));
        (double[] active, double[] quiet) = Run(bridge, Active("a", 25), Active("b", 0));

        Assert.Equal(correlation, Plain.Correlation(a, b), 0.01);
        double[] difference = [.. a.Zip(b, (x, y) => x - y)];
        double distance = Plain.Covariance(difference, difference) / (Plain.Covariance(a, a) + Plain.Covariance(b, b));
        Assert.Equal(1 - correlation, distance, 0.01);
        Assert.Equal(carried, Plain.Rms(quiet) / Plain.Rms(active), 1e-4);
    }

    [Theory]
    [InlineData(0.1, 0.00990099009900990)]
    [InlineData(1, 0.0909090909090909)]
    [InlineData(5, 0.333333333333333)]
    [InlineData(10, 0.5)]
    [InlineData(50, 0.833333333333333)]
    public void AJointWithinAPairTakesTheAmplitudeAway(double kohm, double gain)
    {
        double[,] mixing = ElectrodeNetwork.Mixing([5, 5], [(0, 1, kohm)]);

        Assert.Equal(gain, mixing[0, 0] - mixing[1, 0], 1e-9);
        Assert.Equal(-gain, mixing[0, 1] - mixing[1, 1], 1e-9);
    }

    [Fact]
    public void UnequalImpedancesFollowTheDividerElectrodeByElectrode()
    {
        // A = x + k_a·d and B = y + k_b·d, with s = Z_a2 + Z_b1 + R, k_a = Z_a2/s, k_b = Z_b1/s.
        double[,] mixing = ElectrodeNetwork.Mixing([3, 7, 11, 2], [(1, 2, 4)]);

        double[] channelA = [.. Enumerable.Range(0, 4).Select(i => mixing[0, i] - mixing[1, i])];
        double[] channelB = [.. Enumerable.Range(0, 4).Select(i => mixing[2, i] - mixing[3, i])];

        Near([1, -1 + (7 / 22.0), -7 / 22.0, 0], channelA);
        Near([0, 11 / 22.0, 1 - (11 / 22.0), -1], channelB);
    }

    [Fact]
    public void ThreeElectrodesInOneNodeShareTheMeanWeightedByConductance()
    {
        // Gel over three electrodes of 2, 4 and 4 kΩ: conductances 1/2, 1/4, 1/4, so the node sees (2e1 + e2 + e3)/4.
        double[,] mixing = ElectrodeNetwork.Mixing([2, 4, 4], [(0, 1, 0), (1, 2, 0)]);

        for (int row = 0; row < 3; row++)
        {
            Near([0.5, 0.25, 0.25], [mixing[row, 0], mixing[row, 1], mixing[row, 2]]);
        }
    }

    [Fact]
    public void JointsWithoutResistanceInALoopAreRefused() => Assert.Throws<ArgumentException>(
        () => ElectrodeNetwork.Mixing([5, 5, 5, 5], [(0, 1, 0), (1, 2, 0), (2, 0, 0)]));

    /// <summary>Kirchhoff at every node, by hand: what flows in through the contact leaves through the joints; here one loop and one pair.</summary>
    [Fact]
    public void CurrentsAddUpToNothingAtEveryNode()
    {
        double[] kohm = [2, 3, 5, 7, 11];
        ImmutableArray<(int One, int Other, double Kohm)> joints = [(0, 1, 1), (1, 2, 2), (2, 0, 3), (3, 4, 0.5)];
        double[,] mixing = ElectrodeNetwork.Mixing(kohm, joints);

        for (int source = 0; source < kohm.Length; source++)
        {
            double[] left = [.. kohm.Select((z, node) => ((node == source ? 1 : 0) - mixing[node, source]) / z)];
            foreach ((int one, int other, double joint) in joints)
            {
                double current = (mixing[one, source] - mixing[other, source]) / joint;
                left[one] -= current;
                left[other] += current;
            }

            Near(new double[kohm.Length], left);
        }
    }

    [Fact]
    public void WithoutJointsEveryInputSeesItsOwnElectrode()
    {
        double[,] mixing = ElectrodeNetwork.Mixing([5, 7], []);

        Assert.Equal([1, 0, 0, 1], mixing.Cast<double>());
    }

    /// <summary>A native provider may add in another order, and made recordings would differ from machine to machine.</summary>
    [Fact]
    public void TheSolverIsTheManagedOne() =>
        Assert.StartsWith("Managed", LinearAlgebraControl.Provider.ToString(), StringComparison.Ordinal);

    private static void Near(double[] expected, double[] found)
    {
        foreach ((double want, double got) in expected.Zip(found))
        {
            Assert.Equal(want, got, 1e-12);
        }
    }

    private static SitePlan Noisy(string name, double first, double second) => new()
    {
        Name = name,
        Label = name,
        RestUv = 0,
        ElectrodeNoiseUv = 10,
        FirstKohm = first,
        SecondKohm = second,
        Asymmetry = 0,
    };

    private static SitePlan Active(string name, double rmsUv) => new()
    {
        Name = name,
        Label = name,
        RestUv = rmsUv,
        ElectrodeNoiseUv = 0,
        FirstKohm = 5,
        SecondKohm = 5,
        Asymmetry = 0,
    };

    /// <summary>200 s at 2000 Hz (400 000 samples) behind a noiseless amplifier with steps of 0.1 nV.</summary>
    private static (double[] A, double[] B) Run(Fault? bridge, SitePlan a, SitePlan b)
    {
        SessionPlan plan = new()
        {
            Seed = 11,
            DurationS = 200,
            Sites = [a, b],
            Amplifier = new AmplifierPlan { NoiseUv = 0, OffsetUv = 0, SettlingUvPerMin = 0, Bits = 24, StepUv = 0.0001 },
            Faults = bridge is null ? [] : [bridge],
        };
        MadeRecording made = MadeRecording.Make(plan);
        return (Plain.Samples(made, "a"), Plain.Samples(made, "b"));
    }
}
