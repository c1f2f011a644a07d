using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>How a site's verdict looks, and why, in a few words.</summary>
internal static class SiteLook
{
    /// <summary>The look of a site.</summary>
    public static VerdictLook Of(PilotSite site) => !site.IsAssessed ? VerdictLook.NotAssessed : Of(site.Verdict);

    /// <summary>The look of a verdict.</summary>
    public static VerdictLook Of(Grade grade) => grade switch
    {
        Grade.Reject => VerdictLook.Reject,
        Grade.Questionable => VerdictLook.Questionable,
        _ => VerdictLook.Pass,
    };

    /// <summary>The verdict with its first reason: <c>reject: joined sites</c>; a pass that leaves questions says so.</summary>
    public static string Words(RecordingResult recording, PilotSite site) => Of(site) switch
    {
        VerdictLook.NotAssessed => "not judged",
        VerdictLook.Pass => site.HasOpenQuestions ? "pass, not all judged" : "pass",
        var look when site.Reasons.IsEmpty => VerdictLooks.Word(look),
        var look => $"{VerdictLooks.Word(look)}: {ReasonWords.For(site.Reasons[0].Code).Name}{When(recording, site)}",
    };

    private static string When(RecordingResult recording, PilotSite site) =>
        SiteMoments.Of(recording, site.Name, site.Reasons[0]) is { Length: > 0 } when ? ", " + when : string.Empty;

    /// <summary>Draws the shape of a site's verdict into a square.</summary>
    public static void Draw(Picture picture, Area box, PilotSite site) =>
        VerdictShape.Draw(picture, box, Of(site), hasOpenQuestions: site.HasOpenQuestions);
}
