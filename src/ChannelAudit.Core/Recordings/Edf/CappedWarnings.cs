using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Collects warnings; of one kind the first few are kept and the rest are counted, so that a bad file cannot fill memory.</summary>
/// <param name="file">The file's name without its folder.</param>
internal sealed class CappedWarnings(string file)
{
    /// <summary>How many of one kind are kept.</summary>
    public const int Cap = 5;

    private readonly List<Warning> kept = [];
    private readonly Dictionary<string, (int Count, FilePlace LastPlace)> kinds = new(StringComparer.Ordinal);
    private readonly List<string> order = [];

    /// <summary>The file's name without its folder.</summary>
    public string File => file;

    /// <summary>Whether the next warning of a kind is kept, not only counted.</summary>
    public bool Keeps(string kind) => !kinds.TryGetValue(kind, out (int Count, FilePlace LastPlace) seen) || seen.Count < Cap;

    /// <summary>Adds a warning.</summary>
    /// <param name="kind">What the warnings of one kind have in common, said in a few words.</param>
    /// <param name="place">Where in the file.</param>
    /// <param name="message">What was found and how it was taken; not looked at when the warning is only counted.</param>
    public void Add(string kind, FilePlace place, string message)
    {
        if (!kinds.TryGetValue(kind, out (int Count, FilePlace LastPlace) seen))
        {
            order.Add(kind);
        }

        kinds[kind] = (seen.Count + 1, place);
        if (seen.Count < Cap)
        {
            kept.Add(new Warning(file, place.ToString(), message));
        }
    }

    /// <summary>The warnings kept, in the order found, then one line for each kind that has more.</summary>
    public ImmutableArray<Warning> ToImmutable()
    {
        IEnumerable<Warning> rest = order
            .Where(kind => kinds[kind].Count > Cap)
            .Select(kind => new Warning(
                file,
                $"up to {kinds[kind].LastPlace}",
                string.Create(CultureInfo.InvariantCulture, $"{kind}: {kinds[kind].Count - Cap} more")));
        return [.. kept, .. rest];
    }
}
