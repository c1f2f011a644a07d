using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Tests.Figures;

/// <summary>Made pairs with views: joined at both electrodes, at one, in part, crosstalk, a common source, and odd ones.</summary>
internal static class PairSamples
{
    private static readonly Lazy<(string Name, RecordingResult Recording, PairResult Pair)[]> Made = new(() => [.. Make()]);

    /// <summary>All samples with their names: a recording and one of its pairs.</summary>
    public static IReadOnlyList<(string Name, RecordingResult Recording, PairResult Pair)> All => Made.Value;

    /// <summary>One of them.</summary>
    public static (RecordingResult Recording, PairResult Pair) Of(string name)
    {
        (string _, RecordingResult recording, PairResult pair) = All.First(sample => string.Equals(sample.Name, name, StringComparison.Ordinal));
        return (recording, pair);
    }

    private static IEnumerable<(string Name, RecordingResult Recording, PairResult Pair)> Make()
    {
        (string Name, RecordingResult Recording, PairResult Pair) joined = Named("joined", Session(ElectrodeBridge.TwoNodes("cheek", "eye", 0.5)));
        yield return joined;
        yield return Named("one electrode", Session(ElectrodeBridge.OneNode("cheek", "eye", 0.1)));
        yield return Named("joined late", Session(ElectrodeBridge.TwoNodes("cheek", "eye", 0.5) with { Span = new FaultSpan(100, null) }));
        yield return Named("crosstalk", Session(new Crosstalk("cheek", "eye", 0.2), new Crosstalk("eye", "cheek", 0.2)));
        yield return Named("seven seconds, one channel twice", new SessionPlan
        {
            Seed = 4,
            Sites = [SitePlan.Face[0], SitePlan.Face[1]],
            DurationS = 7,
            Faults = [new IdenticalChannels(SitePlan.Face[0].Name, SitePlan.Face[1].Name)],
        });
        string odd = string.Concat(Enumerable.Repeat("W\u00E4ngli \u0007 \u4E2D\u2067 ", 8));
        yield return ("long labels", joined.Recording, joined.Pair with { ChannelA = odd, ChannelB = new string('W', 80) });
        PairView empty = joined.Pair.View! with { Seconds = [], Rest = null, ActiveA = null, ActiveB = null, Moment = null, Limits = [] };
        yield return ("nothing to draw", joined.Recording, joined.Pair with { View = empty });
    }

    private static SessionPlan Session(params Fault[] faults) => new Protocol { ScoredTrials = 16 }.Plan(37) with { Faults = [.. faults] };

    private static (string Name, RecordingResult Recording, PairResult Pair) Named(string name, SessionPlan plan)
    {
        RecordingResult recording = MadeSession.Audited(plan, withSetup: !plan.Trials.IsEmpty);
        return (name, recording, recording.Pairs.FirstOrDefault(pair => pair.View is not null) ?? throw new InvalidOperationException($"{name}: no pair is suspect; {string.Join(" | ", recording.Pairs.Select(pair => pair.Evidence.Why))}"));
    }
}
