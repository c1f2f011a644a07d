using System.Collections.Immutable;
using ChannelAudit.Reports.Stored;

namespace ChannelAudit.Reports.Bids;

/// <summary>Gives every recording of an audit its BIDS name; no two are alike, and no made participant is taken for a stated one.</summary>
internal static class BidsNames
{
    /// <summary>Names by id. Letters count as the same in either case, as on many file systems.</summary>
    /// <exception cref="ChannelAuditException">When an id has no letter or digit, or two recordings would have one name.</exception>
    public static ImmutableDictionary<string, BidsName> Of(ImmutableArray<StoredRecording> recordings)
    {
        ImmutableDictionary<string, BidsName>.Builder names = ImmutableDictionary.CreateBuilder<string, BidsName>(StringComparer.Ordinal);
        Dictionary<string, StoredRecording> stems = new(StringComparer.OrdinalIgnoreCase);
        Dictionary<string, (StoredRecording Recording, bool IsOwn)> subjects = new(StringComparer.OrdinalIgnoreCase);
        foreach (StoredRecording recording in recordings)
        {
            BidsName name = BidsName.Of(recording.Path, recording.Id, recording.Participant) ?? throw BidsErrors.NoLabel(recording.Id);
            if (!stems.TryAdd(name.Stem, recording))
            {
                throw BidsErrors.SameName(stems[name.Stem].Id, recording.Id, name.Stem);
            }

            // Several recordings of one participant share a label that is stated or made of the participant's; one made of an id stands for one recording only.
            if (!subjects.TryAdd(name.Subject, (recording, name.IsOwn)) && !AreOfOne(subjects[name.Subject], (recording, name.IsOwn)))
            {
                throw BidsErrors.SameName(subjects[name.Subject].Recording.Id, recording.Id, $"sub-{name.Subject}");
            }

            names.Add(recording.Id, name);
        }

        return names.ToImmutable();
    }

    private static bool AreOfOne((StoredRecording Recording, bool IsOwn) one, (StoredRecording Recording, bool IsOwn) other) => (one.IsOwn && other.IsOwn)
        || (one.Recording.Participant is { } participant && string.Equals(participant, other.Recording.Participant, StringComparison.Ordinal));
}
