using System.Collections.Immutable;

namespace ChannelAudit.Pilot;

/// <summary>The attempts of one preparation, this one among them.</summary>
/// <param name="All">All attempts by number.</param>
/// <param name="Now">This one.</param>
/// <param name="Changes">What has changed since the attempt before it, a line each; empty for the first.</param>
public sealed record AttemptSeries(ImmutableArray<PilotAttempt> All, PilotAttempt Now, ImmutableArray<string> Changes)
{
    /// <summary>Adds a report to earlier attempts.</summary>
    /// <param name="earlier">The attempts so far, by number.</param>
    /// <param name="report">The new report; the same bytes again take the place that they had.</param>
    /// <param name="startedBecause">Why the session is started all the same, or null.</param>
    public static AttemptSeries With(ImmutableArray<PilotAttempt> earlier, PilotReport report, string? startedBecause)
    {
        PilotAttempt now = PilotAttempt.Of(report, earlier, startedBecause);
        ImmutableArray<PilotAttempt> others = [.. earlier.Where(attempt => attempt.Number != now.Number)];
        PilotAttempt? before = others.LastOrDefault(attempt => attempt.Number < now.Number);
        return new AttemptSeries(
            [.. others.Append(now).OrderBy(attempt => attempt.Number)],
            now,
            before is null ? [] : AttemptChanges.Of(before, now));
    }
}
