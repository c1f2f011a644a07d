using System.Collections.Immutable;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Core.Tests.Pilot;

/// <summary>The participants of <c>fixtures/pilot/lab-day.tsv</c>, made as its second column tells.</summary>
internal static class LabDay
{
    /// <summary>A participant by the name in the table.</summary>
    public static PilotCase Of(string name, ulong seed)
    {
        SessionPlan good = PilotCase.Recorded(seed);
        return name switch
        {
            "good set-up" => new PilotCase { Plan = good, Readings = PilotCase.Read(good) },
            "cheek bridged to eye" => Faulty(good, ElectrodeBridge.TwoNodes("cheek", "eye", 0.5)),
            "cheek and eye, one electrode each" => Faulty(good, ElectrodeBridge.OneNode("cheek", "eye", 0.3)),
            "leads swapped" => Swapped(good),
            "ground loose" => GroundLoose(good),
            "gel drying" => GelDrying(seed),
            "gel settling" => GelSettling(seed),
            "wrong muscle used" => new PilotCase { Plan = PilotCase.Answering(good, "draw brows together", new SiteActivity("cheek", 25)) },
            "lead off" => Faulty(good, new LeadOff("eye")),
            "charger on the table" => Faulty(good, new MainsPickup(["cheek", "brow", "eye"], 8)),
            "overdriven cheek" => Faulty(good, new HeaderRail("cheek", 60)),
            "doubtful eye" => DoubtfulEye(seed),
            _ => throw new ArgumentException($"Nobody of that name: '{name}'.", nameof(name)),
        };
    }

    private static PilotCase Faulty(SessionPlan good, Fault fault)
    {
        SessionPlan plan = good with { Faults = [fault] };
        return new PilotCase { Plan = plan, Readings = PilotCase.Read(plan) };
    }

    private static PilotCase Swapped(SessionPlan good)
    {
        string cheek = good.Sites[0].Label, brow = good.Sites[1].Label;
        ImmutableArray<SitePlan> swapped = [good.Sites[0] with { Label = brow }, good.Sites[1] with { Label = cheek }, good.Sites[2]];
        return new PilotCase { Plan = good with { Sites = swapped }, AsWrittenDown = good, Readings = PilotCase.Read(good) };
    }

    // An open ground leaves the body at the voltage of the mains around it; what differs between two contacts lets it in.
    private static PilotCase GroundLoose(SessionPlan good)
    {
        SessionPlan plan = good with
        {
            GroundKohm = 200,
            Sites = [.. SitePlan.Face.Select((site, i) => site with { FirstKohm = 2, SecondKohm = 3 + i })],
            Faults = [new CommonModeMains(1_500_000)],
        };
        return new PilotCase { Plan = plan, Readings = PilotCase.Read(plan) };
    }

    private static PilotCase GelDrying(ulong seed)
    {
        SessionPlan wet = PilotCase.Recorded(seed);
        SitePlan cheek = wet.Sites[0] with { FirstKohm = 14, SecondKohm = 16, ElectrodeNoiseUv = 9 };
        SessionPlan dry = wet with { Sites = [cheek, .. wet.Sites.Skip(1)] };
        return new PilotCase { Plan = dry, Readings = PilotCase.Read(wet, "10:00") + PilotCase.Read(dry, "10:40") };
    }

    private static PilotCase GelSettling(ulong seed)
    {
        SessionPlan good = PilotCase.Recorded(seed);
        SessionPlan young = good with { Sites = [good.Sites[0] with { FirstKohm = 6, SecondKohm = 6 }, .. good.Sites.Skip(1)] };
        return new PilotCase { Plan = young, Readings = PilotCase.Read(young) };
    }

    private static PilotCase DoubtfulEye(ulong seed)
    {
        SessionPlan good = PilotCase.Recorded(seed);
        SessionPlan plan = good with
        {
            Sites = [.. good.Sites.Take(2), good.Sites[2] with { FirstKohm = 11, SecondKohm = 13 }],
            Faults = [new BroadbandNoise(["eye"], 4.5)],
        };
        return new PilotCase { Plan = plan, Readings = PilotCase.Read(plan) };
    }
}
