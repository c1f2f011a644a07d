using System.Collections.Immutable;

namespace ChannelAudit.Pilot;

/// <summary>What is kept of one pilot recording of a preparation, so that the next one can say what has changed.</summary>
/// <param name="Number">From 1, over all attempts of the folder.</param>
/// <param name="Recording">Id of the recording.</param>
/// <param name="Sha256">SHA-256 of its bytes: the same bytes are the same attempt.</param>
/// <param name="Answer">The answer.</param>
/// <param name="Sites">The sites in file order.</param>
/// <param name="Joints">Pairs of sites that were joined or may have been, as <c>cheek and eye</c>.</param>
/// <param name="Next">What was proposed, the kinds in order.</param>
/// <param name="StartedBecause">Why the session was started all the same, in the words of whoever did; null when nobody said so.</param>
public sealed record PilotAttempt(
    int Number,
    string Recording,
    string Sha256,
    PilotAnswer Answer,
    ImmutableArray<AttemptSite> Sites,
    ImmutableArray<string> Joints,
    ImmutableArray<StepKind> Next,
    string? StartedBecause)
{
    /// <summary>Whose attempt it is, as the name of the recording tells.</summary>
    public string Participant => PilotParticipant.Of(Recording);

    /// <summary>What is kept of a report.</summary>
    /// <param name="report">The report.</param>
    /// <param name="earlier">The attempts before it; the last one is taken again when its bytes are the same.</param>
    /// <param name="startedBecause">Why the session is started all the same, or null.</param>
    public static PilotAttempt Of(PilotReport report, ImmutableArray<PilotAttempt> earlier, string? startedBecause)
    {
        ArgumentNullException.ThrowIfNull(report);
        PilotAttempt? again = earlier.LastOrDefault(attempt => string.Equals(attempt.Sha256, report.Recording.Sha256, StringComparison.Ordinal)
            && string.Equals(attempt.Participant, PilotParticipant.Of(report.Recording.Id), StringComparison.Ordinal));
        return new PilotAttempt(
            again?.Number ?? earlier.Select(attempt => attempt.Number).DefaultIfEmpty(0).Max() + 1,
            report.Recording.Id,
            report.Recording.Sha256,
            report.Answer,
            [.. report.Sites.Select(Kept)],
            [.. report.Joints.Where(joint => !joint.IsSettledApart).Select(joint => $"{joint.One} and {joint.Other}")],
            [.. report.Next.Select(step => step.Kind)],
            report.Answer == PilotAnswer.Start ? null : startedBecause ?? again?.StartedBecause);
    }

    private static AttemptSite Kept(PilotSite site) =>
        new(site.Name, site.Verdict, [.. site.Reasons.Select(reason => reason.Code)], site.RestUv, site.LineUv, site.Task?.Decibels);
}
