using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Setup;

namespace ChannelAudit.Drafts;

/// <summary>How a setup can name the channels of a recording.</summary>
internal sealed class DraftNames
{
    private readonly Recording _recording;
    private readonly ImmutableArray<string> _channels;
    private readonly HashSet<string> _taken = new(StringComparer.OrdinalIgnoreCase) { SiteSetup.Ground };

    public DraftNames(Recording recording)
    {
        _recording = recording;
        _channels = SiteChannels.Names(recording.Channels.Select(channel => channel.RawLabel));
    }

    /// <summary>The site for a channel, or null when no setup can name it: its label has blanks around or is not plain, or is another's.</summary>
    public DraftSite? SiteOf(Channel channel)
    {
        string own = _channels[channel.Index];
        bool isPlain = own.Length > 0 && own.Trim().Length == own.Length && !own.Any(char.IsControl);
        bool isItsOwn = _recording.Channels.All(other => other.Index == channel.Index || !string.Equals(other.RawLabel, own, StringComparison.Ordinal));
        return isPlain && isItsOwn ? new DraftSite(own, NameOf(own)) : null;
    }

    // Names that differ by case only count as one, and a label that is not audited may not become the name of another site.
    private string NameOf(string channel)
    {
        string name = channel;
        for (int number = 2; !_taken.Add(name); number++)
        {
            name = FormattableString.Invariant($"{channel} ({number})");
        }

        return name;
    }
}
