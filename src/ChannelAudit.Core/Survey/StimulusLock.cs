using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Survey;

/// <summary>Spikes that come with the stimuli: coupling of a trigger or a stimulator, no pops.</summary>
/// <remarks>
/// Locked is what lies within 5 ms of a trial's onset, and what comes equally late (within 5 ms) in half of the trials and in three at least. In a trial in which
/// nothing equally late passed the test of shape, because the muscle is loud there, the samples are asked (<see cref="SpikeRepeats"/>). Only the times of the
/// trials are looked at. Engineering judgement.
/// </remarks>
internal sealed class StimulusLock
{
    private const double ToleranceSeconds = 0.005;
    private const int LeastTrials = 3;

    // A trigger couples in once or a few times a trial; more spikes than that are not looked for in the samples.
    private const int MostPerTrial = 4;

    private readonly List<Pop> found;
    private readonly (long From, long To)[] spans;
    private readonly double tolerance;
    private readonly SpikeRepeats? repeats;

    private StimulusLock(List<Pop> found, Recording recording, Channel channel, IReadOnlyCollection<Trial> trials)
    {
        this.found = found;
        spans = [.. trials.Select(trial => (channel.Rate.IndexAt(trial.OnsetS), channel.Rate.IndexAt(trial.OnsetS + trial.DurationS)))];
        tolerance = ToleranceSeconds * channel.Rate.Value;
        repeats = found.Count <= MostPerTrial * spans.Length ? new SpikeRepeats(recording, channel, (int)tolerance) : null;
    }

    /// <summary>Sorts spikes into pops and those locked to stimuli.</summary>
    /// <param name="found">Spikes in order of time.</param>
    /// <param name="recording">Their recording.</param>
    /// <param name="channel">Their channel.</param>
    /// <param name="trials">The trials.</param>
    public static (List<Pop> Pops, List<Pop> Locked) Split(List<Pop> found, Recording recording, Channel channel, IReadOnlyCollection<Trial> trials)
    {
        StimulusLock stimuli = new(found, recording, channel, trials);
        ILookup<bool, Pop> sorted = found.ToLookup(pop => stimuli.IsLocked(pop.At));
        return ([.. sorted[false]], [.. sorted[true]]);
    }

    private bool IsLocked(long at) => spans.Any(span => Math.Abs(at - span.From) <= tolerance)
        || spans.Any(span => at >= span.From && at < span.To && IsUsual(at, at - span.From));

    private bool IsUsual(long at, long delay)
    {
        int alike = 0;
        int unlike = 0;
        foreach ((long from, _) in spans)
        {
            bool isThere = HasNear(from + delay) || (repeats is not null && repeats.Has(at, from + delay));
            alike += isThere ? 1 : 0;
            unlike += isThere ? 0 : 1;
            if (2 * unlike > spans.Length)
            {
                return false;
            }
        }

        return alike >= LeastTrials;
    }

    private bool HasNear(long at)
    {
        int index = found.BinarySearch(new Pop(at, 0), Comparer<Pop>.Create((a, b) => a.At.CompareTo(b.At)));
        index = index < 0 ? ~index : index;
        return (index < found.Count && found[index].At - at <= tolerance) || (index > 0 && at - found[index - 1].At <= tolerance);
    }
}
