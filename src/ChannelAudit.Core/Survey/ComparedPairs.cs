using System.Collections.Immutable;
using ChannelAudit.Setup;

namespace ChannelAudit.Survey;

/// <summary>Which channels are compared: each with every other; of many channels only those whose sites the setup names as adjacent, where it names any.</summary>
/// <remarks>
/// On a face all pairs are few, and the third channel tells gel from a common source. Of 128 channels there are 8128 pairs, and gel joins neighbours.
/// </remarks>
internal static class ComparedPairs
{
    /// <summary>Up to so many channels all are compared, whatever the setup names.</summary>
    public const int MostForAll = 16;

    /// <summary>Whether two channels are compared; null: all are.</summary>
    /// <param name="names">Names of the audited channels.</param>
    /// <param name="setup">May name adjacent sites.</param>
    public static Func<int, int, bool>? Of(ImmutableArray<string> names, StudySetup setup)
    {
        if (names.Length <= MostForAll)
        {
            return null;
        }

        HashSet<(string, string)> adjacent = [];
        foreach (SiteSetup site in setup.Sites)
        {
            foreach (string near in site.Adjacent.Where(near => names.Contains(near, StringComparer.Ordinal)))
            {
                adjacent.Add((site.Name, near));
                adjacent.Add((near, site.Name));
            }
        }

        return adjacent.Count == 0 ? null : (a, b) => adjacent.Contains((names[a], names[b]));
    }
}
