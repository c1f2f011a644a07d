using ChannelAudit.Findings.Bridges;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Findings;

/// <summary>Closed formulas of joined electrodes. Outside: hand-worked fractions of the resistor network, and networks solved by linear algebra.</summary>
public sealed class JoinedElectrodesTests
{
    // k = 1/2 for no resistance, 1/3 for R = Z, 1/6 for R = 4Z, put into the fractions by hand.
    [Theory]
    [InlineData(0, 1, 1 / 3.0, 0.6)]
    [InlineData(1, 0.8, 2 / 7.0, 5 / 13.0)]
    [InlineData(4, 5 / 13.0, 5 / 31.0, 11 / 61.0)]
    public void CorrelationsAtRestAreTheFractionsOfTheNetwork(double resistance, double both, double one, double muscles)
    {
        Assert.Equal(both, JoinedElectrodes.RestBoth(resistance), 12);
        Assert.Equal(one, JoinedElectrodes.RestOne(resistance), 12);
        Assert.Equal(muscles, JoinedElectrodes.MusclesOne(resistance), 12);
    }

    [Theory]
    [InlineData(0, 1, 1 / 3.0)]
    [InlineData(1, 0.5, 0.2)]
    [InlineData(4, 0.2, 1 / 11.0)]
    public void GainsAreTheFractionsOfTheNetwork(double resistance, double both, double one)
    {
        Assert.Equal(both, JoinedElectrodes.GainBoth(resistance), 12);
        Assert.Equal(one, JoinedElectrodes.GainOne(resistance), 12);
    }

    [Theory]
    [InlineData(0.05)]
    [InlineData(5)]
    [InlineData(20)]
    public void SolvedNetworksAgree(double kohm)
    {
        const double contactKohm = 5;
        SessionPlan plan = new()
        {
            Seed = 1,
            DurationS = 2,
            Amplifier = new AmplifierPlan { NoiseUv = 0 },
            Sites = [.. SitePlan.Face.Select(site => site with { FirstKohm = contactKohm, SecondKohm = contactKohm, RestUv = 0, ElectrodeNoiseUv = 1 })],
        };

        double both = Solved(plan, ElectrodeBridge.TwoNodes("cheek", "eye", kohm));
        double one = Solved(plan, ElectrodeBridge.OneNode("cheek", "eye", kohm));

        Assert.Equal(both, JoinedElectrodes.RestBoth(kohm / contactKohm), 2);
        Assert.Equal(-one, JoinedElectrodes.RestOne(kohm / contactKohm), 2);
    }

    private static double Solved(SessionPlan plan, Fault bridge) => Assert.Single(MadeRecording.Make(plan with { Faults = [bridge] }).Truths).Size;

    // A signal of power r seen by a part g beside independent noise of power 1: g²r / (1 + g²r) of the second channel is the first.
    [Fact]
    public void InAContractionTheCorrelationIsTheRootOfTheSharedPart() =>
        Assert.Equal(Math.Sqrt(0.25 * 0.25 * 100 / (1 + (0.25 * 0.25 * 100))), JoinedElectrodes.Contraction(0.25, 100), 12);

    [Fact]
    public void AmplifierNoiseOfItsOwnMakesChannelsLessAlike()
    {
        // One half of the electrode noise is shared by both, and a quarter is added to each: 0.5 / (0.5 + 0.25).
        Assert.Equal(2 / 3.0, JoinedElectrodes.RestBoth(0, 0.25), 12);
        Assert.Equal(0.25, JoinedElectrodes.RestOne(0, 0.25), 12);
    }
}
