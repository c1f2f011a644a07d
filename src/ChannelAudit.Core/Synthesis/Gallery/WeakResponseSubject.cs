using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Synthesis.Gallery;

/// <summary>A site that does not answer its task, beside one that answers weakly where nobody asked.</summary>
internal static class WeakResponseSubject
{
    /// <summary>The entry.</summary>
    public static GallerySubject Make() => new()
    {
        Code = ReasonCode.WeakResponse,
        Title = "No answer to a task",
        Telling = "Compare the contraction that was asked for with rest: a site that is connected rises far above it. Small answers to photographs are no fault.",
        View = GalleryView.Closeup,
        Fault = new()
        {
            Name = "Gel joins the two electrodes of the site, 0.1 kΩ",
            Fault = ReasonCode.WeakResponse,
            Plan = GallerySession.OfCheek(5901, [ElectrodeBridge.WithinPair(GallerySession.Cheek, 0.1)]),
            Trial = GallerySession.Task,
            Excerpts = TaskAndRest,
            ByEye = "The contraction that was asked for looks like rest.",
        },
        Lookalikes =
        [
            new()
            {
                Name = "The same contraction of 25 µV, electrodes apart",
                Fault = null,
                Plan = GallerySession.OfCheek(5902, []),
                Trial = GallerySession.Task,
                Excerpts = TaskAndRest,
                ByEye = "Far above rest, as soon as the task is done.",
            },
            new()
            {
                Name = "A photograph answered with 1 µV",
                Fault = null,
                Plan = GallerySession.OfCheek(5903, [], answerUv: 1),
                Excerpts = [new(14.5, 15.5, "photograph"), new(3, 3.2, "rest")],
                ByEye = "As flat as the fault, but nobody asked for a contraction: how much a muscle answers is what the study is about.",
            },
        ],
    };

    private static ImmutableArray<GalleryExcerpt> TaskAndRest => [new(9.5, 10.5, "contraction asked for"), new(3, 3.2, "rest")];
}
