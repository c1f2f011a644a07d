using System.Collections.Immutable;

namespace ChannelAudit.Pilot;

/// <summary>The attempts that a folder keeps, this one among them; attempts of one participant are a series of their own.</summary>
/// <param name="All">All attempts by number.</param>
/// <param name="Now">This one.</param>
/// <param name="Changes">What has changed since the participant's attempt before it, a line each; empty for the first.</param>
public sealed record AttemptSeries(ImmutableArray<PilotAttempt> All, PilotAttempt Now, ImmutableArray<string> Changes)
{
    /// <summary>Which attempt of its participant this one is, from 1.</summary>
    public int Place => All.Count(attempt => attempt.Number <= Now.Number && IsOf(attempt, Now.Participant));

    /// <summary>The other participants whose attempts the folder keeps, in order of their first one.</summary>
    public ImmutableArray<string> Others =>
    [
        .. All.Select(attempt => attempt.Participant)
            .Distinct(StringComparer.Ordinal)
            .Where(other => !string.Equals(other, Now.Participant, StringComparison.Ordinal)),
    ];

    /// <summary>Adds a report to earlier attempts.</summary>
    /// <param name="earlier">The attempts so far, by number.</param>
    /// <param name="report">The new report; the same bytes again take the place that they had.</param>
    /// <param name="startedBecause">Why the session is started all the same, or null.</param>
    public static AttemptSeries With(ImmutableArray<PilotAttempt> earlier, PilotReport report, string? startedBecause)
    {
        PilotAttempt now = PilotAttempt.Of(report, earlier, startedBecause);
        ImmutableArray<PilotAttempt> all = [.. earlier.Where(attempt => attempt.Number != now.Number).Append(now).OrderBy(attempt => attempt.Number)];
        return new AttemptSeries(all, now, ChangesOf(now, all));
    }

    /// <summary>What an attempt changed since the one of the same participant before it, a line each; empty for the first.</summary>
    /// <param name="attempt">One of <see cref="All"/>.</param>
    public ImmutableArray<string> ChangesOf(PilotAttempt attempt) => ChangesOf(attempt, All);

    private static ImmutableArray<string> ChangesOf(PilotAttempt attempt, ImmutableArray<PilotAttempt> all) =>
        all.LastOrDefault(other => other.Number < attempt.Number && IsOf(other, attempt.Participant)) is { } before ? AttemptChanges.Of(before, attempt) : [];

    private static bool IsOf(PilotAttempt attempt, string participant) => string.Equals(attempt.Participant, participant, StringComparison.Ordinal);
}
