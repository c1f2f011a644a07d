using System.Collections.Immutable;
using ChannelAudit.Segments;
using ChannelAudit.Signals.Random;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Calibration.TrialStudy;

/// <summary>What everybody did: rest, a contraction of each muscle, 99 pictures of three kinds in an order of their own, rest.</summary>
internal static class HarbourProtocol
{
    /// <summary>The condition in which people sway most.</summary>
    internal const string Storm = "storm";

    /// <summary>Pictures of each condition.</summary>
    internal const int EachCondition = 33;

    /// <summary>The conditions.</summary>
    internal static ImmutableArray<string> Conditions { get; } = ["harbour", "meadow", Storm];

    private const decimal PictureS = 3;

    /// <summary>The trials of a session; onsets are whole tenths of a second.</summary>
    /// <param name="seed">The session's seed: decides order, pauses and the strength of each answer.</param>
    /// <param name="face">Whose face it is.</param>
    internal static ImmutableArray<PlannedTrial> Trials(ulong seed, HarbourFace face)
    {
        Pcg32 random = NoiseStream.Of(seed, "protocol");
        List<PlannedTrial> trials = [];
        decimal at = 2;
        Add(20, "rest", TrialRole.Rest, []);
        foreach (SitePlan site in SitePlan.Face)
        {
            Add(5, site.Task!, TrialRole.Task, [new SiteActivity(site.Name, face.TaskUv)]);
        }

        foreach (string condition in Shuffled(random))
        {
            double strength = face.Answer * (0.7 + (0.6 * random.NextDouble()));
            Add(PictureS, condition, TrialRole.Scored, [.. Answer(condition).Select(one => one with { RmsUv = one.RmsUv * strength })]);
        }

        Add(20, "rest", TrialRole.Rest, []);
        return [.. trials];

        void Add(decimal durationS, string label, TrialRole role, ImmutableArray<SiteActivity> activity)
        {
            trials.Add(new PlannedTrial { OnsetS = at, DurationS = durationS, Label = label, Role = role, Activity = activity });
            at += durationS + 1.2M + ((int)(9 * random.NextDouble()) / 10M);
        }
    }

    private static ImmutableArray<SiteActivity> Answer(string condition) => condition switch
    {
        "harbour" => [new SiteActivity("cheek", 8), new SiteActivity("eye", 5)],
        Storm => [new SiteActivity("brow", 8)],
        _ => [new SiteActivity("cheek", 5), new SiteActivity("brow", 3)],
    };

    private static string[] Shuffled(Pcg32 random)
    {
        string[] order = [.. Conditions.SelectMany(condition => Enumerable.Repeat(condition, EachCondition))];
        for (int i = order.Length - 1; i > 0; i--)
        {
            int other = (int)((i + 1) * random.NextDouble());
            (order[i], order[other]) = (order[other], order[i]);
        }

        return order;
    }
}
