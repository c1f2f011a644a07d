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

    /// <summary>Whether a file of a BIDS data set is a recording of ours: its other modalities are none.</summary>
    /// <param name="name">The file's name without its folder.</param>
    public static bool TakesOfBids(string name) =>
        !IsHidden(name) && (name.EndsWith("_emg.edf", StringComparison.OrdinalIgnoreCase) || name.EndsWith("_emg.bdf", StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether a folder of a BIDS data set holds something else than its recordings (specification, "Common principles").</summary>
    /// <param name="name">The folder's name.</param>
    public static bool IsBesideBids(string name) => name is "derivatives" or "sourcedata" or "code" or "stimuli" or "phenotype";

    /// <summary>Whether a file is text, which may be anything.</summary>
    /// <param name="name">The file's name.</param>
    public static bool IsText(string name) => Path.GetExtension(name).ToUpperInvariant() is ".CSV" or ".TSV" or ".TXT";

    /// <summary>Whether a name starts with a dot: version control, and the shadow files of some file systems.</summary>
    /// <param name="name">The name of a file or folder.</param>
    public static bool IsHidden(string name) => name.StartsWith('.');
}
