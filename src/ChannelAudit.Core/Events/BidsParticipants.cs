using ChannelAudit.Text;

namespace ChannelAudit.Events;

/// <summary><c>participants.tsv</c> of a BIDS data set: the groups of its participants. Nothing else of it is used.</summary>
public static class BidsParticipants
{
    private const string TableName = "participants.tsv";

    /// <summary>The group of a participant.</summary>
    /// <param name="recording">The recording's path in the file system; its data set is the nearest folder above with a <c>dataset_description.json</c>.</param>
    /// <param name="participant">As in <c>participant_id</c>: <c>sub-01</c>.</param>
    /// <returns>Null without data set, table, column <c>group</c> or line, or for <c>n/a</c>; a table that cannot be read gives no group.</returns>
    public static string? GroupOf(string recording, string participant)
    {
        for (DirectoryInfo? folder = new FileInfo(recording).Directory; folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, BidsCompanions.DescriptionName)))
            {
                return GroupIn(Path.Combine(folder.FullName, TableName), participant);
            }
        }

        return null;
    }

    private static string? GroupIn(string table, string participant)
    {
        try
        {
            if (!File.Exists(table) || PlainFile.IsEmpty(table))
            {
                return null;
            }

            string[][] rows = [.. File.ReadLines(table).Select(line => line.TrimStart('\uFEFF').Split('\t'))];
            int id = Array.FindIndex(rows[0], name => string.Equals(name.Trim(), "participant_id", StringComparison.Ordinal));
            int group = Array.FindIndex(rows[0], name => string.Equals(name.Trim(), "group", StringComparison.Ordinal));
            string? found = id < 0 || group < 0
                ? null
                : rows.Skip(1).FirstOrDefault(row => row.Length > Math.Max(id, group) && string.Equals(row[id].Trim(), participant, StringComparison.Ordinal))?[group].Trim();
            return found is null or "" or "n/a" ? null : found;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or IndexOutOfRangeException)
        {
            return null;
        }
    }
}
