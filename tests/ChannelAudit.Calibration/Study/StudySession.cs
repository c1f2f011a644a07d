using System.Collections.Immutable;
using ChannelAudit.Segments;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Calibration.Study;

/// <summary>The session that every recording of the study goes through: rest, each muscle asked alone, scored trials, rest.</summary>
internal static class StudySession
{
    public const string Cheek = "cheek";
    public const string Brow = "brow";
    public const string Eye = "eye";

    /// <summary>The three sites.</summary>
    public static ImmutableArray<string> AllSites { get; } = [Cheek, Brow, Eye];

    /// <summary>A plan with what every room and face adds, and some faults.</summary>
    public static SessionPlan With(Subject subject, params ImmutableArray<Fault> faults)
    {
        ImmutableArray<SitePlan> sites = [.. subject.Sites()];
        double answer = subject.Answer * subject.RestUv;
        SessionPlan plan = new Protocol
        {
            ScoredTrials = 8,
            RestS = 10,
            TaskS = 4,
            PauseS = 2,
            ContractionUv = subject.ContractionUv,
            Answers = [[new SiteActivity(Brow, answer)], [new SiteActivity(Cheek, answer), new SiteActivity(Eye, 0.6 * answer)]],
        }.Plan(subject.Seed, sites);
        return plan with
        {
            Rate = subject.Rate,
            Amplifier = subject.Amplifier,
            Faults = [.. EveryDay(subject), .. faults],
        };
    }

    /// <summary>The scored trials of a plan, by number from 1.</summary>
    public static ImmutableArray<int> Scored(SessionPlan plan) =>
        [.. Enumerable.Range(1, plan.Trials.Length).Where(number => plan.Trials[number - 1].Role == TrialRole.Scored)];

    /// <summary>One fault for every second scored trial.</summary>
    public static SessionPlan InTrials(Subject subject, Func<PlannedTrial, Fault> fault)
    {
        SessionPlan plan = With(subject);
        return plan with
        {
            Faults = [.. plan.Faults, .. Scored(plan).Where((_, i) => i % 2 == 0).Select(number => fault(plan.Trials[number - 1]))],
        };
    }

    private static IEnumerable<Fault> EveryDay(Subject subject)
    {
        if (subject.RoomMainsUv > 0)
        {
            yield return new MainsPickup(AllSites, subject.RoomMainsUv, subject.MainsHz) { WanderHz = 0.02 };
        }

        yield return new Crosstalk(Cheek, Eye, subject.Crosstalk);
        yield return new Crosstalk(Eye, Cheek, subject.Crosstalk);
    }
}
