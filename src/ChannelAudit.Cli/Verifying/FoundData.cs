using System.Collections.Immutable;
using ChannelAudit.Reports.Verifying;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Verifying;

/// <summary>The recordings of an audit, found again below a folder.</summary>
/// <param name="Entries">Those that are there, by id, the ones that could not be read then among them.</param>
/// <param name="Missing">Paths of those that are not.</param>
/// <param name="Changed">Those that have other bytes than were audited, each in words.</param>
internal sealed record FoundData(ImmutableArray<RecordingEntry> Entries, ImmutableArray<string> Missing, ImmutableArray<string> Changed)
{
    /// <summary>Searches for them, and hashes them.</summary>
    /// <param name="root">The folder that was screened, one above it, or one recording.</param>
    /// <param name="run">The audit.</param>
    /// <exception cref="ChannelAuditException">When there is no such folder, or a recording cannot be read.</exception>
    public static FoundData Below(string root, RecordedRun run)
    {
        string folder = File.Exists(root) ? Path.GetDirectoryName(Path.GetFullPath(root))! : root;
        EnumerationOptions noLinks = new() { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint };
        Lazy<ILookup<string, string>> byName = new(() => Directory.EnumerateFiles(folder, "*", noLinks)
            .Order(StringComparer.Ordinal)
            .ToLookup(file => Path.GetFileName(file), StringComparer.Ordinal));
        List<RecordingEntry> entries = [];
        List<string> missing = [];
        List<string> changed = [];
        foreach ((string id, string path, string? sha256) in Wanted(run))
        {
            if (Place(folder, path, sha256, byName) is not { } place)
            {
                missing.Add(path);
                continue;
            }

            entries.Add(new RecordingEntry(id, place, path));
            if (sha256 is not null && InputKey.HashOf(place) is { } now && !string.Equals(now, sha256, StringComparison.Ordinal))
            {
                changed.Add($"{OneLine.Of(path)} has other bytes than were audited (SHA-256 {now[..8]} instead of {OneLine.Of(sha256)[..Math.Min(8, sha256.Length)]})");
            }
        }

        return new FoundData([.. entries.OrderBy(entry => entry.Id, StringComparer.Ordinal)], [.. missing], [.. changed]);
    }

    /// <summary>What is said of them.</summary>
    /// <param name="root">The folder as it was given.</param>
    public AuditCheck Check(string root)
    {
        string[] faults = [.. Missing.Select(path => $"{OneLine.Of(path)} is not below {OneLine.Of(root)}"), .. Changed];
        return faults.Length == 0
            ? new AuditCheck("recordings", CheckState.Ok, $"{Quantities.Many(Entries.Length, "recording")} below {OneLine.Of(root)} with the bytes that were audited")
            : new AuditCheck("recordings", CheckState.Differs, string.Join("; ", faults));
    }

    private static IEnumerable<(string Id, string Path, string? Sha256)> Wanted(RecordedRun run) => run.Audit.Recordings
        .Select(recording => (recording.Id, recording.Path, (string?)recording.Sha256))
        .Concat(run.Unread.Select(unread => (RecordingId.Of(unread.Path), unread.Path, (string?)null)));

    // An audit knows paths below the root it was given; a reviewer may have that root inside another folder.
    private static string? Place(string folder, string path, string? sha256, Lazy<ILookup<string, string>> byName)
    {
        string exact = Path.Combine(folder, path);
        if (!Path.IsPathRooted(path) && !path.Split('/').Contains("..", StringComparer.Ordinal) && File.Exists(exact))
        {
            return exact;
        }

        string ending = "/" + path;
        string[] others = [.. byName.Value[path.Split('/')[^1]].Where(file => file.Replace(Path.DirectorySeparatorChar, '/').EndsWith(ending, StringComparison.Ordinal))];
        return others.FirstOrDefault(file => sha256 is null || FileHash.Is(file, sha256)) ?? others.FirstOrDefault();
    }
}
