using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Survey;

/// <summary>Spikes that come with the stimuli: coupling of a trigger or a stimulator, no pops.</summary>
/// <remarks>
/// Locked is what lies within 5 ms of a trial's onset, and what comes equally late (within 5 ms) in half of the trials and in three at least.
/// Only the times of the trials are looked at. Engineering judgement.
/// </remarks>
internal static class StimulusLock
{
    private const double ToleranceSeconds = 0.005;
    private const int LeastTrials = 3;

    /// <summary>Sorts spikes into pops and those locked to stimuli.</summary>
    /// <param name="found">Spikes in order of time.</param>
    /// <param name="channel">Their channel.</param>
    /// <param name="trials">The trials.</param>
    public static (List<Pop> Pops, List<Pop> Locked) Split(List<Pop> found, Channel channel, IReadOnlyCollection<Trial> trials)
    {
        (long From, long To)[] spans =
            [.. trials.Select(trial => (channel.Rate.IndexAt(trial.OnsetS), channel.Rate.IndexAt(trial.OnsetS + trial.DurationS)))];
        double tolerance = ToleranceSeconds * channel.Rate.Value;
        ILookup<bool, Pop> sorted = found.ToLookup(pop => IsLocked(pop.At));
        return ([.. sorted[false]], [.. sorted[true]]);

        bool IsLocked(long at) => spans.Any(span => Math.Abs(at - span.From) <= tolerance)
            || spans.Any(span => at >= span.From && at < span.To && IsUsual(at - span.From));

        bool IsUsual(long delay)
        {
            int alike = spans.Count(span => HasNear(found, span.From + delay, tolerance));
            return alike >= LeastTrials && 2 * alike >= spans.Length;
        }
    }

    private static bool HasNear(List<Pop> found, long at, double tolerance)
    {
        int index = found.BinarySearch(new Pop(at, 0), Comparer<Pop>.Create((a, b) => a.At.CompareTo(b.At)));
        index = index < 0 ? ~index : index;
        return (index < found.Count && found[index].At - at <= tolerance) || (index > 0 && at - found[index - 1].At <= tolerance);
    }
}
