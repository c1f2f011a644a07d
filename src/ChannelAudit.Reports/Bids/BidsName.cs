using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace ChannelAudit.Reports.Bids;

/// <summary>The entities of a recording in a BIDS data set.</summary>
/// <remarks>BIDS 1.11, "Electromyography": <c>sub</c>, <c>ses</c>, <c>task</c>, <c>acq</c>, <c>run</c>, <c>recording</c>, in this order.</remarks>
internal sealed partial record BidsName
{
    /// <summary>The task of a recording whose own name states none: BIDS requires one.</summary>
    public const string NoTask = "unnamed";

    private const string Prefix = "sub-";

    private static readonly ImmutableArray<string> Kept = ["sub", "ses", "task", "acq", "run", "recording"];

    /// <summary>The participant's label.</summary>
    public required string Subject { get; init; }

    /// <summary>The session's label, or null.</summary>
    public string? Session { get; init; }

    /// <summary>Entities joined by <c>_</c>, <c>sub</c> first.</summary>
    public required string Stem { get; init; }

    /// <summary>Whether the recording's own file name gave the participant.</summary>
    public bool IsOwn { get; init; }

    /// <summary>The folder of its files, <c>sub-01/ses-a/emg</c>.</summary>
    public string Folder => Session is null ? $"sub-{Subject}/emg" : $"sub-{Subject}/ses-{Session}/emg";

    /// <summary>Takes the entities of a BIDS file name, else the participant, with the rest of the id as session; else makes a participant of the id.</summary>
    /// <param name="path">The recording's path, with <c>/</c>.</param>
    /// <param name="id">Its id.</param>
    /// <param name="participant">The participant, or null.</param>
    /// <returns>Null when neither the participant nor the id has an ASCII letter or digit.</returns>
    public static BidsName? Of(string path, string id, string? participant = null)
    {
        string file = path[(path.LastIndexOf('/') + 1)..];
        string stem = file.Contains('.', StringComparison.Ordinal) ? file[..file.LastIndexOf('.')] : file;
        Match match = Entities().Match(stem);
        if (match.Success)
        {
            string? Label(string entity) => match.Groups[entity] is { Success: true } group ? group.Value : null;
            IEnumerable<string> parts = Kept
                .Select(entity => (entity, Label(entity) ?? (string.Equals(entity, "task", StringComparison.Ordinal) ? NoTask : null)))
                .Where(part => part.Item2 is not null)
                .Select(part => $"{part.entity}-{part.Item2}");
            return new BidsName { Subject = Label("sub")!, Session = Label("ses"), Stem = string.Join('_', parts), IsOwn = true };
        }

        if (participant is not null && Letters(participant.StartsWith(Prefix, StringComparison.Ordinal) ? participant[Prefix.Length..] : participant) is { Length: > 0 } known)
        {
            string rest = Letters(Without(id, participant));
            return rest.Length == 0
                ? new BidsName { Subject = known, Stem = $"sub-{known}_task-{NoTask}" }
                : new BidsName { Subject = known, Session = rest, Stem = $"sub-{known}_ses-{rest}_task-{NoTask}" };
        }

        string made = Letters(id);
        return made.Length == 0 ? null : new BidsName { Subject = made, Stem = $"sub-{made}_task-{NoTask}" };
    }

    /// <summary>A file of the export: <c>sub-01/emg/sub-01_task-x_desc-quality_channels.tsv</c>.</summary>
    /// <param name="suffix"><c>channels</c> or <c>events</c>.</param>
    /// <param name="extension">With its dot.</param>
    public string File(string suffix, string extension) => $"{Folder}/{Stem}_desc-quality_{suffix}{extension}";

    private static string Letters(string text) => string.Concat(text.Where(char.IsAsciiLetterOrDigit));

    // An id is its path with + between folders; the participant is one of them, or begins a name.
    private static string Without(string id, string participant)
    {
        string[] parts = id.Split('+');
        int place = Array.FindIndex(parts, part => string.Equals(part, participant, StringComparison.Ordinal));
        place = place >= 0 ? place : Array.FindIndex(parts, part => part.StartsWith(participant, StringComparison.Ordinal));
        if (place >= 0)
        {
            parts[place] = parts[place][participant.Length..];
        }

        return string.Join('+', parts);
    }

    [GeneratedRegex(
        "^sub-(?<sub>[0-9A-Za-z]+)(_ses-(?<ses>[0-9A-Za-z]+))?(_task-(?<task>[0-9A-Za-z]+))?(_acq-(?<acq>[0-9A-Za-z]+))?"
            + "(_run-(?<run>[0-9]+))?(_recording-(?<recording>[0-9A-Za-z]+))?(_[0-9A-Za-z]+)?$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000)]
    private static partial Regex Entities();
}
