using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Tests.Synthesis;

/// <summary>Gel from an electrode to the ground: A = x + k·(e_a2 − e_g), k = Z_a2/(Z_a2 + Z_g + R), derived by hand (methods 1.2).</summary>
public sealed class GroundBridgeTests
{
    [Fact]
    public void TheChannelGetsAShareOfWhatLiesBetweenElectrodeAndGround()
    {
        // Contacts a1 3, a2 7, b1 11, b2 2, ground 5 kΩ; gel of 4 kΩ from a2 to the ground: k = 7/16.
        double[,] mixing = ElectrodeNetwork.Mixing([3, 7, 11, 2, 5], [(1, 4, 4)]);

        double[] channelA = [.. Enumerable.Range(0, 5).Select(i => mixing[0, i] - mixing[1, i])];
        double[] channelB = [.. Enumerable.Range(0, 5).Select(i => mixing[2, i] - mixing[3, i])];

        Near([1, -1 + (7 / 16.0), 0, 0, -7 / 16.0], channelA);
        Near([0, 0, 1, -1, 0], channelB);
    }

    [Theory]
    [InlineData(0, 5, 0.5)]
    [InlineData(5, 5, 0.333333333333)]
    [InlineData(0, 20, 0.2)]
    public void ARemotePotentialThatADifferenceHidesComesInByThatShare(double kohm, double groundKohm, double share)
    {
        CommonSource remote = new(100, [new RemoteShare("a", Potential: 1, Across: 0)]);
        CommonSource shown = new(100, [new RemoteShare("a", Potential: 0, Across: 1)]);
        ElectrodeBridge gel = ElectrodeBridge.ToGround(Electrode.Second("a"), kohm);

        double hidden = Plain.Rms(Samples(groundKohm, 0, remote));
        double full = Plain.Rms(Samples(groundKohm, 0, shown));
        double[] joined = Samples(groundKohm, 0, remote, gel);

        Assert.Equal(0, hidden, 1e-9);
        Assert.Equal(share, Plain.Rms(joined) / full, 1e-5);
        Assert.Equal(1, Plain.Correlation(joined, Samples(groundKohm, 0, shown)), 1e-6);
    }

    [Fact]
    public void TheFirstElectrodeTakesTheShareWithTheOtherSign()
    {
        CommonSource remote = new(100, [new RemoteShare("a", Potential: 1, Across: 0)]);

        double[] second = Samples(5, 0, remote, ElectrodeBridge.ToGround(Electrode.Second("a"), 1));
        double[] first = Samples(5, 0, remote, ElectrodeBridge.ToGround(Electrode.First("a"), 1));

        Assert.Equal(-1, Plain.Correlation(first, second), 1e-6);
    }

    [Fact]
    public void TheGroundsOwnNoiseComesInOnlyThroughTheGel()
    {
        // White noise of 10 µV rms in 430 Hz has 10·√(1000/430) up to half of 2000 Hz; k = 1/2.
        double[] joined = Samples(5, 10, ElectrodeBridge.ToGround(Electrode.Second("a"), 0));

        Assert.Equal(0.5 * 10 * Math.Sqrt(1000 / 430.0), Plain.Rms(joined), 0.1);
        Assert.Equal(0, Plain.Rms(Samples(5, 10)), 1e-9);
    }

    [Fact]
    public void TheTruthIsTheShareAndNamesTheSiteOnly()
    {
        MadeRecording made = MadeRecording.Make(Plan(20, 0.5, ElectrodeBridge.ToGround(Electrode.First("a"), 0)));

        Truth truth = Assert.Single(made.Truths);

        Assert.Equal((ReasonCode.Bridge, "ground_share", "a"), (truth.Reason, truth.Measure, Assert.Single(truth.Sites)));
        Assert.Equal(0.2, truth.Size, 1e-12);
    }

    [Fact]
    public void AnotherBridgeMakesTheSameCodesWhateverTheGroundIs()
    {
        ElectrodeBridge gel = ElectrodeBridge.OneNode("cheek", "eye", 1);
        SessionPlan plan = new() { Seed = 3, DurationS = 4, Faults = [gel] };

        MadeRecording one = MadeRecording.Make(plan);
        MadeRecording other = MadeRecording.Make(plan with { GroundKohm = 50, GroundNoiseUv = 100 });

        Assert.True(one.CodesOf("cheek").SequenceEqual(other.CodesOf("cheek")));
    }

    private static double[] Samples(double groundKohm, double groundNoiseUv, params ImmutableArray<Fault> faults) =>
        Plain.Samples(MadeRecording.Make(Plan(groundKohm, groundNoiseUv, faults)), "a");

    private static SessionPlan Plan(double groundKohm, double groundNoiseUv, params ImmutableArray<Fault> faults) => new()
    {
        Seed = 11,
        DurationS = 20,
        Sites = [new SitePlan { Name = "a", Label = "a", RestUv = 0, ElectrodeNoiseUv = 0, FirstKohm = 5, SecondKohm = 5 }],
        GroundKohm = groundKohm,
        GroundNoiseUv = groundNoiseUv,
        Amplifier = new AmplifierPlan { NoiseUv = 0, OffsetUv = 0, SettlingUvPerMin = 0, Bits = 24, StepUv = 0.0001 },
        Faults = faults,
    };

    private static void Near(double[] expected, double[] found)
    {
        foreach ((double want, double got) in expected.Zip(found))
        {
            Assert.Equal(want, got, 1e-12);
        }
    }
}
