using System.Collections.Immutable;
using ChannelAudit.Setup;

namespace ChannelAudit.Drafts;

/// <summary>What a setup leaves open although most studies need it: no mistake, since every key may be left out, but never called complete.</summary>
public static class SetupGaps
{
    private const int MostNames = 6;

    /// <summary>A line for each thing that is still to be filled in: what, at which sites, and what is missed without it; empty when nothing is lacking.</summary>
    /// <param name="setup">The setup.</param>
    public static ImmutableArray<string> Of(StudySetup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        List<string> gaps = [];
        if (setup.Sites.IsEmpty)
        {
            gaps.Add("sites: none, so no channel has the name of a place, a task or neighbours");
        }

        Add("task", site => site.Task is null, "whether its muscle answers cannot be checked");
        Add("muscle", site => site.Muscle is null, "its place on the face is not known, if its name does not tell");
        Add("side", site => site.Side is null && site.Position.IsEmpty, "it is drawn on the left (or give position)");
        if (setup.Sites.Length > 1 && setup.Sites.All(site => site.Adjacent.IsEmpty))
        {
            gaps.Add("adjacent: at no site, so nothing tells which sites gel can join");
        }

        if (setup.Trials.Rest.IsEmpty)
        {
            gaps.Add("rest, in [trials]: no label, so the quietest seconds stand for it");
        }

        return [.. gaps];

        void Add(string key, Func<SiteSetup, bool> isMissing, string without)
        {
            string[] names = [.. setup.Sites.Where(isMissing).Select(site => site.Name)];
            if (names.Length > 0)
            {
                gaps.Add($"{key} of {string.Join(", ", names.Take(MostNames))}{(names.Length > MostNames ? ", ..." : string.Empty)}: {without}");
            }
        }
    }
}
