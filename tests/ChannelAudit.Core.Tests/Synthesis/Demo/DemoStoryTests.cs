using System.Runtime.InteropServices;
using System.Security.Cryptography;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Demo;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Tests.Synthesis.Demo;

/// <summary>Each session's story is found where its plan has it, and nothing else is. Truth: plan and stored codes, never what the engine says.</summary>
public sealed class DemoStoryTests(WrittenDemo demo) : IClassFixture<WrittenDemo>
{
    [Fact]
    public void TheCleanSessionPassesInEveryCell()
    {
        Assert.Empty(Session("K03").Faults);
        Expect("K03", new(StringComparer.Ordinal));
        Assert.All(demo.Of("K03").Channels, channel => Assert.Equal(Grade.Pass, channel.Verdict));
    }

    [Fact]
    public void TheLooseLeadIsMainsAtTheCheekFromMidSessionOn()
    {
        MainsPickup lead = Assert.IsType<MainsPickup>(Assert.Single(Session("K07").Faults));
        int[] met = Met("K07", lead);

        Assert.Equal("cheek", Assert.Single(lead.Sites));
        Assert.Equal([.. Enumerable.Range(16, 14)], met);
        Expect("K07", new(StringComparer.Ordinal) { ["cheek line-noise reject"] = met });
    }

    [Fact]
    public void TheGelIsABridgeOfCheekAndEyeAllTheTime()
    {
        ElectrodeBridge gel = Assert.IsType<ElectrodeBridge>(Assert.Single(Session("K11").Faults));
        int[] all = Met("K11", gel);

        Assert.Equal(["cheek", "eye"], gel.Paths.SelectMany(path => new[] { path.One.Site, path.Other.Site }).Distinct(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.Equal(29, all.Length);
        Expect("K11", new(StringComparer.Ordinal) { ["cheek bridge reject"] = all, ["eye bridge reject"] = all });
    }

    [Fact]
    public void TheHighGainIsClippingAtTheEyeInItsSqueezeAndInHarbours()
    {
        MadeRecording made = MadeRecording.Make(Session("K12").Plan);
        int[] clipped = [.. made.Plan.Trials.Select((trial, i) => (trial, number: i + 1)).Where(one => ShareAtRail(made, "eye", one.trial) >= 1.5).Select(one => one.number)];
        int[] harbours = [.. Numbers(made.Plan, trial => string.Equals(trial.Label, "harbour", StringComparison.Ordinal))];

        Assert.Equal([4, .. harbours], clipped);
        Assert.Equal("close eyes firmly", made.Plan.Trials[3].Label);
        Expect("K12", new(StringComparer.Ordinal) { ["eye clipping reject"] = clipped });
    }

    [Fact]
    public void TheLeadThatFellOffIsFlatAtTheBrowAndThePauseCutsOneTrialOfAll()
    {
        int[] flat = Met("K15", Session("K15").Faults.OfType<Flatline>().Single());
        int[] cut = Met("K15", Session("K15").Faults.OfType<RecordingGap>().Single());

        Assert.Equal([13, 14, 15, 16, 17], flat);
        Assert.Equal([17], cut);
        Expect("K15", new(StringComparer.Ordinal)
        {
            ["brow flatline reject"] = flat,
            ["brow dropout reject"] = cut,
            ["cheek dropout reject"] = cut,
            ["eye dropout reject"] = cut,
        });
    }

    [Fact]
    public void TheContactThatNeverSettlesDriftsAtTheBrowAllTheTime()
    {
        Drift drift = Assert.IsType<Drift>(Assert.Single(Session("K18").Faults));

        Assert.Equal("brow", drift.Site);
        Expect("K18", new(StringComparer.Ordinal) { ["brow drift questionable"] = Met("K18", drift) });
        Assert.Equal(Grade.Questionable, demo.Of("K18").Channels.Single(channel => string.Equals(channel.Name, "brow", StringComparison.Ordinal)).Verdict);
    }

    [Fact]
    public void EverySessionHasThreeConditionsOfEightAndTwoToThreeMinutes() => Assert.All(DemoStudy.Sessions, session =>
    {
        string[] scored = [.. session.Trials.Where(trial => trial.Role == TrialRole.Scored).Select(trial => trial.Label)];

        Assert.Equal(["harbour", "meadow", "orchard"], scored.Take(3), StringComparer.Ordinal);
        Assert.All(scored.CountBy(label => label, StringComparer.Ordinal), one => Assert.Equal(8, one.Value));
        Assert.InRange(session.Plan.DurationS, 120, 180);
        Assert.Equal(2000, session.Plan.Rate.Value);
    });

    [Fact]
    public void EveryCodeIsTheSameOnEveryMachineAndDay()
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (MadeRecording made in DemoStudy.Sessions.Select(session => MadeRecording.Make(session.Plan)))
        {
            foreach (SitePlan site in made.Plan.Sites)
            {
                hash.AppendData(MemoryMarshal.AsBytes(made.CodesOf(site.Name)));
            }
        }

        // Made once and kept: a clock, an unseeded number or a system's own sine would change it.
        Assert.Equal("c2bdfeb62b183fd1f15528f04011c2921bd8fd8ea3d81c0d12c141001fcfd3e9", Convert.ToHexStringLower(hash.GetHashAndReset()));
    }

    private static DemoSession Session(string code) => DemoStudy.Sessions.Single(session => string.Equals(session.Code, code, StringComparison.Ordinal));

    private static int[] Met(string code, Fault fault) => [.. Session(code).Plan.TrialsIn(fault.Span)];

    private static IEnumerable<int> Numbers(SessionPlan plan, Func<PlannedTrial, bool> which) =>
        plan.Trials.Select((trial, i) => (trial, number: i + 1)).Where(one => which(one.trial)).Select(one => one.number);

    /// <summary>Percent of a trial's codes at the outermost two codes of either side.</summary>
    private static double ShareAtRail(MadeRecording made, string site, PlannedTrial trial)
    {
        SampleSpan span = made.Plan.SamplesOf(FaultSpan.Of(trial));
        int[] codes = made.CodesOf(site)[span.From..span.To].ToArray();
        return 100.0 * codes.Count(code => code <= made.LowestCodeOf(site) + 1 || code >= made.HighestCodeOf(site) - 1) / codes.Length;
    }

    private void Expect(string code, SortedDictionary<string, int[]> expected) => Assert.Equal(
        expected.Select(one => $"{one.Key}: {string.Join(' ', one.Value)}"),
        WrittenDemo.Blemishes(demo.Of(code)).Select(one => $"{one.Key}: {string.Join(' ', one.Value)}"),
        StringComparer.Ordinal);
}
