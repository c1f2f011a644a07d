using ChannelAudit.Recordings;
using ChannelAudit.Setup;

namespace ChannelAudit.Survey;

/// <summary>Which channels see blinks and lid movements: those whose muscle, site or label speaks of the eye or the brow.</summary>
public static class EyeSite
{
    private static readonly string[] Words = ["eye", "brow", "ocul", "corrugator", "supercili"];

    /// <summary>Whether a channel lies at the eye or the brow.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="name">Its site's name, or its label.</param>
    /// <param name="setup">May name the site's muscle, which then decides.</param>
    public static bool Is(Channel channel, string name, StudySetup setup)
    {
        SiteSetup? site = setup.Sites.FirstOrDefault(site => string.Equals(site.Name, name, StringComparison.Ordinal));
        string[] texts = site?.Muscle is { } muscle ? [muscle] : [name, channel.Label];
        return texts.Any(text => Words.Any(word => text.Contains(word, StringComparison.OrdinalIgnoreCase)));
    }
}
