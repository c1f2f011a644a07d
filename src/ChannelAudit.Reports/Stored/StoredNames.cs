using System.Collections.Immutable;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Stored;

/// <summary>Finds the recordings of an audit by what people call them: the id, the path, or the file's name, with or without its extension.</summary>
/// <remarks>Exact names come before other capitalisation, whole paths before bare file names. A longer path counts when it ends in that of the audit.</remarks>
public sealed class StoredNames
{
    private readonly ImmutableArray<StoredRecording> _recordings;
    private readonly ImmutableArray<ILookup<string, StoredRecording>> _tiers;

    /// <summary>Takes the names of some recordings.</summary>
    public StoredNames(ImmutableArray<StoredRecording> recordings)
    {
        _recordings = recordings;
        _tiers =
        [
            Lookup(Whole, StringComparer.Ordinal), Lookup(Whole, StringComparer.OrdinalIgnoreCase),
            Lookup(Bare, StringComparer.Ordinal), Lookup(Bare, StringComparer.OrdinalIgnoreCase),
        ];
    }

    /// <summary>The recording of a name; or, without one or with several, why not, as a clause.</summary>
    public (StoredRecording? Found, string? Cause) Find(string name)
    {
        string given = name.Replace('\\', '/');

        // Our own tables put one apostrophe before names that a spreadsheet would run.
        return Fitting(given) switch
        {
            [] when given.StartsWith('\'') && Fitting(given[1..]) is [var bare] => (bare, null),
            [] => (null, $"the audit has no recording \"{OneLine.Of(name)}\"{Near(given)}"),
            [var one] => (one, null),
            var several => (null, $"\"{OneLine.Of(name)}\" fits several recordings: {OneLine.List(several.Select(one => one.Id))}"),
        };
    }

    private StoredRecording[] Fitting(string given)
    {
        StoredRecording[] found = [];
        for (int tier = 0; tier < _tiers.Length && found.Length == 0; tier++)
        {
            found = [.. _tiers[tier][given].Distinct()];
        }

        return found.Length > 0 ? found : [.. Endings(given).SelectMany(ending => _tiers[1][ending]).Distinct()];
    }

    private static IEnumerable<string> Whole(StoredRecording recording) => [recording.Id, recording.Path, Stem(recording.Path)];

    private static IEnumerable<string> Bare(StoredRecording recording)
    {
        string file = recording.Path[(recording.Path.LastIndexOf('/') + 1)..];
        return [file, Stem(file)];
    }

    // Stems of the last component only: "day.1/p07" has no extension.
    private static string Stem(string path)
    {
        int dot = path.LastIndexOf('.');
        return dot > path.LastIndexOf('/') + 1 ? path[..dot] : path;
    }

    private static IEnumerable<string> Endings(string path)
    {
        for (int slash = path.IndexOf('/', StringComparison.Ordinal); slash >= 0; slash = path.IndexOf('/', slash + 1))
        {
            yield return path[(slash + 1)..];
        }
    }

    private ILookup<string, StoredRecording> Lookup(Func<StoredRecording, IEnumerable<string>> names, StringComparer comparer) => _recordings
        .SelectMany(recording => names(recording).Distinct(comparer).Select(name => (Name: name, Recording: recording)))
        .ToLookup(entry => entry.Name, entry => entry.Recording, comparer);

    private string Near(string given)
    {
        string bare = Stem(given[(given.LastIndexOf('/') + 1)..]);
        return (NearestName.Of(Stem(given), _recordings.Select(recording => recording.Id)) ?? NearestName.Of(bare, _recordings.Select(recording => recording.Id))) is { } near
            ? $"; did you mean \"{OneLine.Of(near)}\"?"
            : string.Empty;
    }
}
