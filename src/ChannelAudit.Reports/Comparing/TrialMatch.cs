using System.Collections.Immutable;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Comparing;

/// <summary>Finds the trials that two audits of a recording share.</summary>
internal static class TrialMatch
{
    /// <summary>Pairs of trials with the same onset, duration and label, in the order of the first; then those that only the second has.</summary>
    public static ImmutableArray<(Trial? A, Trial? B)> Of(ImmutableArray<Trial> a, ImmutableArray<Trial> b)
    {
        Dictionary<(decimal, decimal, string?), Queue<Trial>> open = [];
        foreach (Trial trial in b)
        {
            (open.TryGetValue(Key(trial), out Queue<Trial>? queue) ? queue : open[Key(trial)] = new Queue<Trial>()).Enqueue(trial);
        }

        ImmutableArray<(Trial?, Trial?)>.Builder pairs = ImmutableArray.CreateBuilder<(Trial?, Trial?)>();
        HashSet<int> taken = [];
        foreach (Trial trial in a)
        {
            Trial? other = open.TryGetValue(Key(trial), out Queue<Trial>? queue) && queue.TryDequeue(out Trial? found) ? found : null;
            pairs.Add((trial, other));
            if (other is not null)
            {
                taken.Add(other.Number);
            }
        }

        pairs.AddRange(b.Where(trial => !taken.Contains(trial.Number)).Select(trial => ((Trial?)null, (Trial?)trial)));
        return pairs.ToImmutable();
    }

    private static (decimal OnsetS, decimal DurationS, string? Label) Key(Trial trial) => (trial.OnsetS, trial.DurationS, trial.Label);
}
