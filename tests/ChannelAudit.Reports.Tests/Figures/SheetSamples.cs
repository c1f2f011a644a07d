using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Figures;

/// <summary>Made channels with views: faulty, short, alone, with a label too long, without rest, without a unit.</summary>
internal static class SheetSamples
{
    private static readonly Lazy<RecordingResult> FaultySession = new(() => MadeSession.Audited(Session(16), withSetup: true));

    /// <summary>The session with faults: mains on the cheek, a dead second on the brow, a squeeze of the eye that clips.</summary>
    public static RecordingResult Faulty() => FaultySession.Value;

    /// <summary>All samples with their names: a recording and one of its channels.</summary>
    public static IEnumerable<(string Name, RecordingResult Recording, ChannelResult Channel)> All()
    {
        RecordingResult faulty = Faulty();
        yield return ("faulty", faulty, faulty.Channels[0]);
        yield return ("flat", faulty, faulty.Channels[1]);
        yield return ("clipped", faulty, faulty.Channels[2]);
        RecordingResult brief = MadeSession.Audited(new SessionPlan { Seed = 2, Sites = [SitePlan.Face[0]], Trials = [], DurationS = 2 }, withSetup: false);
        yield return ("two seconds, one channel, blocks", brief, brief.Channels[0]);
        ChannelResult odd = faulty.Channels[0] with { Name = string.Concat(Enumerable.Repeat("Wängli \u0007 \u4E2D\u2067 ", 8)) };
        yield return ("long label", faulty with { Channels = faulty.Channels.SetItem(0, odd) }, odd);
        ChannelResult raw = faulty.Channels[0] with { View = faulty.Channels[0].View! with { IsMicrovolts = false, LowerRail = null, UpperRail = null, RestRms = null } };
        yield return ("raw codes", faulty with { Channels = faulty.Channels.SetItem(0, raw) }, raw);
        ChannelResult still = faulty.Channels[0] with
        {
            Cells = [],
            View = faulty.Channels[0].View! with { Closeup = null, Density = [], Levels = [], LevelTimesS = [] },
        };
        yield return ("no trials, no spectrum", faulty with { Trials = [], Channels = faulty.Channels.SetItem(0, still) }, still);
        ChannelResult many = faulty.Channels[0] with { Cells = [.. Enumerable.Range(0, 400).Select(i => faulty.Channels[0].Cells[i % 21] with { Trial = i + 1 })] };
        yield return ("400 trials", faulty with
        {
            Trials = [.. Enumerable.Range(0, 400).Select(i => faulty.Trials[i % 21] with { Number = i + 1 })],
            Channels = faulty.Channels.SetItem(0, many),
        }, many);
    }

    private static SessionPlan Session(int scored)
    {
        SessionPlan plan = new Protocol { ScoredTrials = scored, Answers = [[new SiteActivity("brow", 7)], [new SiteActivity("cheek", 9)]] }.Plan(91);
        ImmutableArray<PlannedTrial> trials = plan.Trials.SetItem(9, plan.Trials[9] with { Activity = [new SiteActivity("eye", 110)] });
        return plan with
        {
            Trials = trials,
            Faults =
            [
                new MainsPickup(["cheek"], 9) { Span = new FaultSpan(124, null) },
                new HeaderRail("eye", 200),
                new Flatline("brow") { Span = new FaultSpan(trials[13].OnsetS + 1, trials[13].OnsetS + 2) },
            ],
        };
    }
}
