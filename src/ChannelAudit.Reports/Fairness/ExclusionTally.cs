using System.Collections.Immutable;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Fairness;

/// <summary>Gathers exclusions one recording at a time; kept are counts by participant, channel and condition, so that memory does not grow with recordings or trials.</summary>
/// <remarks>Excluded is what has the final verdict reject. Only scored trials count: rest and tasks are not conditions. A recording of nobody known
/// counts as a participant of its own.</remarks>
public sealed class ExclusionTally
{
    private readonly SortedDictionary<string, ParticipantTally> _participants = new(StringComparer.Ordinal);

    /// <summary>Recordings of nobody known.</summary>
    public int Unknown { get; private set; }

    /// <summary>Scored trials without a label, each counted once a channel.</summary>
    public int Unlabelled { get; private set; }

    /// <summary>Participants in ordinal order of their names.</summary>
    internal ImmutableArray<ParticipantTally> Participants => [.. _participants.Values];

    /// <summary>Adds a recording.</summary>
    public void Add(RecordingResult recording)
    {
        ArgumentNullException.ThrowIfNull(recording);
        Unknown += recording.Participant is null ? 1 : 0;

        // No id starts with a blank: a recording cannot be taken for a participant of the same name.
        string key = recording.Participant ?? $" {recording.Id}";
        if (!_participants.TryGetValue(key, out ParticipantTally? participant))
        {
            participant = new ParticipantTally();
            _participants.Add(key, participant);
        }

        if (recording.Group is { } group)
        {
            participant.Groups.Add(group);
        }

        Dictionary<int, string> conditions = recording.Trials
            .Where(trial => trial.Role == TrialRole.Scored)
            .ToDictionary(trial => trial.Number, trial => trial.Label ?? string.Empty);
        foreach (ChannelResult channel in recording.Channels)
        {
            participant.AddChannel(channel.Name, FinalVerdict.OfChannel(recording, channel) == Grade.Reject);
            foreach (CellResult cell in channel.Cells)
            {
                if (conditions.TryGetValue(cell.Trial, out string? condition))
                {
                    Unlabelled += condition.Length == 0 ? 1 : 0;
                    participant.AddTrial(channel.Name, condition, FinalVerdict.OfTrial(recording, channel, cell) == Grade.Reject);
                }
            }
        }
    }

    /// <summary>Compares what was gathered.</summary>
    public FairnessReport Report() => new FairnessComparer(this).Report();
}
