using System.Collections.Immutable;
using ChannelAudit.Pilot;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Pilot;

/// <summary>Taps on lead wires settle what resting data leave open. The shares follow from the node equations of methods 1.2: Z/(Z+R) for equal contacts.</summary>
public sealed class TapTests
{
    private static readonly string[] Sites = ["cheek", "brow", "eye"];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void WithoutAJointTapsStayWhereTheyAre(int seed)
    {
        PilotReport report = Tapped((ulong)seed, new Crosstalk("cheek", "eye", 0.25)).Run();

        Assert.NotNull(report.Taps);
        Assert.Empty(report.Taps.NotSeen);
        Assert.All(report.Taps.Pairs, pair => Assert.Equal(TapVerdict.Apart, pair.Verdict));
        Assert.Equal(PilotAnswer.Start, report.Answer);
    }

    [Theory]
    [InlineData(0.1, 1)]
    [InlineData(1, 2)]
    [InlineData(4, 3)]
    public void OneJointIsSettledByTaps(double kohm, int seed)
    {
        PilotReport report = Tapped((ulong)seed, ElectrodeBridge.OneNode("cheek", "eye", kohm)).Run();

        TappedPair pair = report.Taps!.Pairs.Single(pair => pair is { One: "cheek", Other: "eye" });
        Assert.Equal(TapVerdict.Joined, pair.Verdict);
        Assert.InRange(pair.OneToOther!.Value, 0.8 * 2 / (2 + kohm), 1.2 * 2 / (2 + kohm));
        Assert.All(report.Taps.Pairs.Where(other => other != pair), other => Assert.Equal(TapVerdict.Apart, other.Verdict));
        Assert.Equal(PilotAnswer.NotYet, report.Answer);
        Assert.Equal(StepKind.Wipe, report.Next[0].Kind);
    }

    [Fact]
    public void AJerkOfTheWholeHeadSettlesNothing()
    {
        // The same swing reaches every site with the wire that is tapped.
        PilotCase tapped = Tapped(4);
        ImmutableArray<Fault> shaken = [.. tapped.Plan.Faults.OfType<LeadTaps>().SelectMany(taps => Sites
            .Where(site => !string.Equals(site, taps.Wire.Site, StringComparison.Ordinal))
            .Select(site => taps with { Wire = Electrode.First(site), HeightUv = 0.6 * taps.HeightUv }))];
        PilotReport report = (tapped with { Plan = tapped.Plan with { Faults = [.. tapped.Plan.Faults, .. shaken] } }).Run();

        Assert.Empty(report.Taps!.NotSeen);
        Assert.All(report.Taps.Pairs, pair => Assert.Equal(TapVerdict.Open, pair.Verdict));
        Assert.Equal(PilotAnswer.Start, report.Answer);
    }

    [Fact]
    public void TapsThatAreTooLightAreSaidToBeUnseen()
    {
        PilotCase tapped = Tapped(5);
        PilotReport report = (tapped with { Plan = tapped.Plan with { Faults = [] } }).Run();

        Assert.Equal(Sites.Order(StringComparer.Ordinal), report.Taps!.NotSeen.Order(StringComparer.Ordinal));
        Assert.All(report.Taps.Pairs, pair => Assert.Equal(TapVerdict.Open, pair.Verdict));
        Assert.Contains(report.NotChecked, line => line.Contains("fewer than two were seen", StringComparison.Ordinal));
    }

    [Fact]
    public void TheAuditEndsBeforeTheTaps()
    {
        PilotReport with = Tapped(6).Run();
        PilotReport without = new PilotCase { Plan = PilotCase.Recorded(6) }.Run();

        Assert.Equal(without.Recording.Trials.Length, with.Recording.Trials.Length);
        Assert.All(with.Sites, site => Assert.Empty(site.Reasons));
    }

    // The protocol as printed: rest and tasks, then taps on both wires of each site.
    private static PilotCase Tapped(ulong seed, params ReadOnlySpan<Fault> faults)
    {
        SessionPlan plan = PilotCase.Recorded(seed);
        decimal at = plan.DurationS + 2;
        List<Fault> taps = [.. faults];
        List<PlannedTrial> trials = [.. plan.Trials];
        foreach (string site in Sites)
        {
            trials.Add(new PlannedTrial { OnsetS = at, DurationS = 4, Label = "tap " + site });
            taps.Add(new LeadTaps(Electrode.First(site), 300) { Span = new FaultSpan(at, at + 2) });
            taps.Add(new LeadTaps(Electrode.Second(site), 300) { Span = new FaultSpan(at + 2, at + 4) });
            at += 5;
        }

        return new PilotCase { Plan = plan with { DurationS = at + 1, Trials = [.. trials], Faults = [.. taps] } };
    }
}
