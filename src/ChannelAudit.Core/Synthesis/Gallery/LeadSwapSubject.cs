using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>Two sites that answer each other's task, beside a smile that reaches both.</summary>
internal static class LeadSwapSubject
{
    private const string Cheek = GallerySession.Cheek;
    private const string Eye = GallerySession.Eye;

    /// <summary>The entry.</summary>
    public static GallerySubject Make() => new()
    {
        Code = ReasonCode.LeadSwap,
        Title = "Leads exchanged",
        Telling = "Each site rests while its own task is done and answers the other's; where both answer, nothing is exchanged.",
        View = GalleryView.Pair,
        Fault = new()
        {
            Name = "The leads of cheek and eye are exchanged",
            Fault = ReasonCode.LeadSwap,
            Plan = WithTasks(5951, [new SiteActivity(Eye, 25)], [new SiteActivity(Cheek, 25)]),
            Partner = Eye,
            Trial = GallerySession.Task,
            Excerpts = OneAfterTheOther,
            ByEye = "During the cheek's task the cheek rests, during the eye's task the eye.",
        },
        Lookalikes =
        [
            new()
            {
                Name = "Each site answers its own task",
                Fault = null,
                Plan = WithTasks(5952, [new SiteActivity(Cheek, 25)], [new SiteActivity(Eye, 25)]),
                Partner = Eye,
                Trial = GallerySession.Task,
                Excerpts = OneAfterTheOther,
                ByEye = "The site that is asked is the one that moves.",
            },
            new()
            {
                Name = "A smile that reaches the eyes, and a squeeze that lifts the cheek",
                Fault = null,
                Plan = WithTasks(5953, [new SiteActivity(Cheek, 25), new SiteActivity(Eye, 15)], [new SiteActivity(Eye, 25), new SiteActivity(Cheek, 15)]),
                Partner = Eye,
                Trial = GallerySession.Task,
                Excerpts = OneAfterTheOther,
                ByEye = "Both move in both tasks, so each has answered its own.",
            },
        ],
    };

    private static ImmutableArray<GalleryExcerpt> OneAfterTheOther => [new(9, 9.1, "cheek asked"), new(15, 15.1, "eye asked")];

    private static SessionPlan WithTasks(ulong seed, ImmutableArray<SiteActivity> smile, ImmutableArray<SiteActivity> squeeze)
    {
        SessionPlan plan = GallerySession.OfCheekAndEye(seed, [], (0, 0));
        return plan with { Trials = plan.Trials.SetItem(1, plan.Trials[1] with { Activity = smile }).SetItem(2, plan.Trials[2] with { Activity = squeeze }) };
    }
}
