using System.Collections.Immutable;
using ChannelAudit.Reports.Stored;

namespace ChannelAudit.Reports.Comparing;

/// <summary>What differs between two audits; results are read one recording at a time and not kept.</summary>
public sealed record AuditComparison
{
    /// <summary>As many groups of changes are kept to be shown; all changes go to the receiver.</summary>
    public const int MostShown = 200;

    /// <summary>The first audit.</summary>
    public required StoredAudit A { get; init; }

    /// <summary>The second audit.</summary>
    public required StoredAudit B { get; init; }

    /// <summary>Ids of recordings that only the first audit has.</summary>
    public required ImmutableArray<string> OnlyInA { get; init; }

    /// <summary>Ids of recordings that only the second audit has.</summary>
    public required ImmutableArray<string> OnlyInB { get; init; }

    /// <summary>Ids of recordings whose bytes are not the same.</summary>
    public required ImmutableArray<string> OtherBytes { get; init; }

    /// <summary>Verdicts of channels that both have.</summary>
    public VerdictCrossing Channels { get; } = new();

    /// <summary>Verdicts of trials, each counted once a channel, that both have.</summary>
    public VerdictCrossing Trials { get; } = new();

    /// <summary>The first groups of changes that are alike, at most <see cref="MostShown"/>.</summary>
    public ImmutableArray<ChangeGroup> Shown { get; private set; } = [];

    /// <summary>How many channels changed.</summary>
    public int ChangedChannels { get; private set; }

    /// <summary>How many trials changed, each counted once a channel.</summary>
    public int ChangedTrials { get; private set; }

    /// <summary>Whether recordings, verdicts, reasons and what was not assessed are the same.</summary>
    public bool IsSame => OnlyInA.IsEmpty && OnlyInB.IsEmpty && OtherBytes.IsEmpty && ChangedChannels + ChangedTrials == 0;

    /// <summary>Compares two audits.</summary>
    /// <param name="a">The first.</param>
    /// <param name="b">The second.</param>
    /// <param name="receive">Gets the changes of each recording that has any.</param>
    /// <param name="cancel">Checked for every recording.</param>
    /// <exception cref="ChannelAuditException">When a result cannot be read.</exception>
    public static AuditComparison Of(StoredAudit a, StoredAudit b, Action<ImmutableArray<VerdictChange>> receive, CancellationToken cancel)
    {
        Dictionary<string, StoredRecording> ofB = b.Recordings.ToDictionary(recording => recording.Id, StringComparer.Ordinal);
        StoredRecording[] shared = [.. a.Recordings.Where(recording => ofB.ContainsKey(recording.Id))];
        HashSet<string> sharedIds = shared.Select(recording => recording.Id).ToHashSet(StringComparer.Ordinal);
        AuditComparison comparison = new()
        {
            A = a,
            B = b,
            OnlyInA = [.. a.Recordings.Select(recording => recording.Id).Where(id => !sharedIds.Contains(id))],
            OnlyInB = [.. b.Recordings.Select(recording => recording.Id).Where(id => !sharedIds.Contains(id))],
            OtherBytes = [.. shared.Where(one => !string.Equals(one.Sha256, ofB[one.Id].Sha256, StringComparison.Ordinal)).Select(one => one.Id)],
        };
        foreach (StoredRecording recording in shared)
        {
            cancel.ThrowIfCancellationRequested();
            RecordingComparison results = new(a.ResultOf(recording), b.ResultOf(ofB[recording.Id]), a.Criteria, b.Criteria);
            comparison.Add(results.Changes(comparison.Channels, comparison.Trials), receive);
        }

        return comparison;
    }

    private void Add(ImmutableArray<VerdictChange> changes, Action<ImmutableArray<VerdictChange>> receive)
    {
        if (changes.IsEmpty)
        {
            return;
        }

        receive(changes);
        ChangedChannels += changes.Count(change => change.Trial is null);
        ChangedTrials += changes.Count(change => change.Trial is not null);
        Shown = Shown.AddRange(ChangeGroup.Of(changes).Take(MostShown - Shown.Length));
    }
}
