namespace ChannelAudit.Setup;

/// <summary>Who was recorded: a code, never a name from a header.</summary>
/// <param name="Participant">The participant; null when nobody says.</param>
/// <param name="Group">The group; null when nobody says.</param>
public sealed record Person(string? Participant, string? Group)
{
    private const string BidsKey = "sub-";

    /// <summary>Who a recording is of: what <c>[[recordings]]</c> says, else <c>[participants]</c>, else the <c>sub-</c> of a BIDS name and the table of its data set.</summary>
    /// <param name="setup">The setup, before what is different for the recording.</param>
    /// <param name="path">The recording's path below the given root, with <c>/</c>.</param>
    /// <param name="groupOf">The group that a data set's table of participants gives, by participant; null: it gives none.</param>
    public static Person Of(StudySetup setup, string path, Func<string, string?> groupOf)
    {
        RecordingOverride[] about = [.. setup.Overrides.Where(one => one.IsAbout(path))];
        string? participant = about.LastOrDefault(one => one.Participant is not null)?.Participant ?? setup.ParticipantPath?.Find(path, "participant") ?? InBidsName(path);
        string? group = about.LastOrDefault(one => one.Group is not null)?.Group
            ?? setup.ParticipantPath?.Find(path, "group")
            ?? (participant is null ? null : groupOf(participant));
        return new Person(participant, group);
    }

    private static string? InBidsName(string path)
    {
        string[] parts = path[(path.LastIndexOf('/') + 1)..].Split('_');
        return parts[0].StartsWith(BidsKey, StringComparison.Ordinal) && parts[0].Length > BidsKey.Length && parts.Length > 1 ? parts[0] : null;
    }
}
