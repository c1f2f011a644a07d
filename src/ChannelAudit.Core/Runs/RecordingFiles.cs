using System.Collections.Immutable;

namespace ChannelAudit.Runs;

/// <summary>Which files of a folder are taken for recordings.</summary>
internal static class RecordingFiles
{
    // Tables and notes that the BIDS standard puts beside recordings, and what our own audits are made of.
    private static readonly ImmutableArray<string> CompanionEndings =
        ["_events.tsv", "_channels.tsv", "_electrodes.tsv", "_scans.tsv", "_sessions.tsv"];

    private static readonly ImmutableArray<string> CompanionNames =
    [
        "participants.tsv", "README.txt", "CHANGES.txt", "LICENSE.txt",
        "verdicts.tsv", "channels.tsv", "conditions.tsv", "measures.tsv", "pairs.tsv", "do-next.txt",
    ];

    private static readonly ImmutableArray<string> Extensions = [".edf", ".bdf", ".csv", ".tsv", ".txt"];

    /// <summary>The extensions for a message.</summary>
    public static string ExtensionsInWords => string.Join(", ", Extensions);

    /// <summary>Whether a file found in a folder is taken for a recording.</summary>
    /// <param name="name">The file's name without its folder.</param>
    public static bool Takes(string name) =>
        !IsHidden(name)
        && Extensions.Contains(Path.GetExtension(name), StringComparer.OrdinalIgnoreCase)
        && !CompanionNames.Contains(name, StringComparer.OrdinalIgnoreCase)
        && !CompanionEndings.Any(ending => name.EndsWith(ending, StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether a name starts with a dot: version control, and the shadow files of some file systems.</summary>
    /// <param name="name">The name of a file or folder.</param>
    public static bool IsHidden(string name) => name.StartsWith('.');
}
