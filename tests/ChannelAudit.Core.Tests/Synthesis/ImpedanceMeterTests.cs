using System.Collections.Immutable;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Tests.Synthesis;

/// <summary>Readings against the nodal values of the project's table (methods 1.13): every impedance 5 kΩ, gel of 0.5 or 5 kΩ.</summary>
public sealed class ImpedanceMeterTests
{
    [Fact]
    public void WithoutGelEachReadingIsTheSumOfTwoContacts() => Assert.Equal([10, 10, 10, 10, 10, 10], Readings(null));

    [Theory]
    [InlineData(0.5, 0.48, 7.62)]
    [InlineData(5, 3.33, 8.33)]
    public void GelWithinAPairShowsInItsOwnReadings(double kohm, double pair, double ground)
    {
        double[] readings = Readings(ElectrodeBridge.WithinPair("cheek", kohm));

        Assert.Equal([pair, ground, ground, 10, 10, 10], readings);
    }

    [Fact]
    public void GelBetweenSitesShowsOnlyAcrossThem()
    {
        ElectrodeBridge gel = ElectrodeBridge.OneNode("cheek", "eye", 0.5);

        Assert.Equal([7.62, 10, 7.62, 7.62, 7.62, 10], Readings(gel));
        Assert.Equal(0.48, Across(gel, Electrode.Second("cheek"), Electrode.First("eye")), 0.005);
        Assert.Equal(10, Across(null, Electrode.Second("cheek"), Electrode.First("eye")), 0.005);
    }

    [Fact]
    public void GelToTheGroundShowsAtEverySite()
    {
        ElectrodeBridge gel = ElectrodeBridge.ToGround(Electrode.Second("cheek"), 0.5);

        Assert.Equal([7.62, 7.62, 0.48, 10, 7.62, 7.62], Readings(gel));
        Assert.Equal(7.62, Across(gel, Electrode.Second("cheek"), Electrode.First("eye")), 0.005);
        Assert.Equal(0.48, Across(gel, Electrode.Second("cheek"), Electrode.Ground), 0.005);
    }

    [Fact]
    public void TheGroundHasAnImpedanceOfItsOwn() => Assert.Equal(
        [10, 7, 7, 10, 7, 7], ImpedanceMeter.StandardReadings(Plan(null) with { GroundKohm = 2 }).Select(one => one.Kohm));

    [Fact]
    public void AReadingAcrossNamesBothEnds()
    {
        ImpedanceReading reading = ImpedanceMeter.Across(Plan(null), Electrode.Second("cheek"), Electrode.First("eye"));

        Assert.Equal(("cheek", "cheek.b-eye.a"), (reading.Site, reading.Pair));
        Assert.Equal("eye.a-ground", ImpedanceMeter.Across(Plan(null), Electrode.First("eye"), Electrode.Ground).Pair);
        Assert.Equal(
            ["cheek a-b", "cheek a-ground", "cheek b-ground", "eye a-b", "eye a-ground", "eye b-ground"],
            ImpedanceMeter.StandardReadings(Plan(null)).Select(one => $"{one.Site} {one.Pair}"),
            StringComparer.Ordinal);
    }

    private static double[] Readings(Fault? fault) => [.. ImpedanceMeter.StandardReadings(Plan(fault)).Select(one => Math.Round(one.Kohm, 2))];

    private static double Across(Fault? fault, Electrode one, Electrode other) => ImpedanceMeter.Across(Plan(fault), one, other).Kohm;

    private static SessionPlan Plan(Fault? fault) => new()
    {
        Seed = 1,
        DurationS = 1,
        Sites = [Site("cheek"), Site("eye")],
        Faults = fault is null ? [] : ImmutableArray.Create(fault),
    };

    private static SitePlan Site(string name) => new() { Name = name, Label = name, FirstKohm = 5, SecondKohm = 5 };
}
