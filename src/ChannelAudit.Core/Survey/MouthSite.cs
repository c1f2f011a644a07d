using ChannelAudit.Recordings;
using ChannelAudit.Setup;

namespace ChannelAudit.Survey;

/// <summary>Which channels lie where speech and chewing are seen first: those whose muscle, site or label speaks of the cheek or the mouth.</summary>
public static class MouthSite
{
    private static readonly string[] Words = ["cheek", "zygomatic", "mouth", "lip", "masseter", "buccinator", "oris", "risorius"];

    /// <summary>Whether a channel lies at the cheek or the mouth.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="name">Its site's name, or its label.</param>
    /// <param name="site">The site of the setup; its muscle decides when it is named.</param>
    public static bool Is(Channel channel, string name, SiteSetup? site)
    {
        string[] texts = site?.Muscle is { } muscle ? [muscle] : [name, channel.Label];
        return texts.Any(text => Words.Any(word => text.Contains(word, StringComparison.OrdinalIgnoreCase)));
    }
}
