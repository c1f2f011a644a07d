using ChannelAudit.Impedance;
using Xunit;

namespace ChannelAudit.Core.Tests.Impedance;

/// <summary>The star model against a nodal solution of the network and against sums worked out by hand.</summary>
public sealed class SolvedImpedanceTests
{
    private const double ToleranceKohm = 0.01;
    private const double None = double.PositiveInfinity;

    /// <summary>
    /// The project's check row 16: contacts of 5 kΩ and one bridge. The printed figures were calculated by nodes before this code was
    /// written; the network gives the readings once more (MathNet.Numerics solves it).
    /// </summary>
    [Theory]
    [InlineData("a1", "a2", None, new[] { 10, 10, 10.0 }, new[] { 5, 5, 5.0 }, 5, 10)]
    [InlineData("a1", "a2", 0.5, new[] { 0.48, 7.62, 7.62 }, new[] { 0.24, 0.24, 7.38 }, 5, 7.62)]
    [InlineData("a1", "a2", 5, new[] { 3.33, 8.33, 8.33 }, new[] { 1.67, 1.67, 6.67 }, 5, 8.33)]
    [InlineData("a2", "b1", 0.5, new[] { 7.62, 10, 7.62 }, new[] { 5, 2.62, 5 }, 5, 0.48)]
    [InlineData("a2", "ground", 0.5, new[] { 7.62, 7.62, 0.48 }, new[] { 7.38, 0.24, 0.24 }, 2.62, 7.62)]
    public void ReadingsOfABridgedNetworkAreSolvedAsPrinted(
        string from, string to, double bridgeKohm, double[] readings, double[] solved, double otherGround, double cross)
    {
        ContactNetwork network = new(5, from, to, bridgeKohm);
        ImpedanceTriple a = network.Site("a");
        SolvedImpedance own = SolvedImpedance.Of(a);

        Near(readings, [a.AbKohm, a.AGroundKohm, a.BGroundKohm]);
        Near(solved, [own.AKohm, own.BKohm, own.GroundKohm]);
        Near([otherGround, cross], [SolvedImpedance.Of(network.Site("b")).GroundKohm, network.Reading("a2", "b1")]);
    }

    /// <summary>By hand: contacts of 3, 7 and 11 kΩ read 3 + 7, 3 + 11 and 7 + 11.</summary>
    [Fact]
    public void FreeContactsComeBackEachInItsPlace() =>
        Assert.Equal(new SolvedImpedance(3, 7, 11), SolvedImpedance.Of(new ImpedanceTriple(10, 14, 18)));

    /// <summary>By hand: (1 + 10 − 30)/2 = −9.5, (1 + 30 − 10)/2 = 10.5, (10 + 30 − 1)/2 = 19.5.</summary>
    [Fact]
    public void ReadingsThatNoStarGivesLeaveANegativeContact() =>
        Assert.Equal(new SolvedImpedance(-9.5, 10.5, 19.5), SolvedImpedance.Of(new ImpedanceTriple(1, 10, 30)));

    [Theory]
    [InlineData(-0.1, 10, 10)]
    [InlineData(10, double.NaN, 10)]
    [InlineData(10, 10, double.PositiveInfinity)]
    public void WhatIsNoReadingIsRefused(double ab, double aGround, double bGround) =>
        Assert.Throws<ArgumentException>(() => SolvedImpedance.Of(new ImpedanceTriple(ab, aGround, bGround)));

    private static void Near(double[] expected, double[] found)
    {
        Assert.Equal(expected.Length, found.Length);
        foreach ((double want, double got) in expected.Zip(found))
        {
            Assert.InRange(got, want - ToleranceKohm, want + ToleranceKohm);
        }
    }
}
