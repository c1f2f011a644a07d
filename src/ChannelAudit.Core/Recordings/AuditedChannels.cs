using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Setup;

namespace ChannelAudit.Recordings;

/// <summary>Which channels are audited, and under which names.</summary>
internal static class AuditedChannels
{
    /// <summary>The channels that the setup names as sites, or all that can be audited when it names none.</summary>
    /// <exception cref="ChannelAuditException">When none is left.</exception>
    public static ImmutableArray<(Channel Channel, string Name)> Of(Recording recording, StudySetup setup)
    {
        Dictionary<string, string> names = setup.Sites.ToDictionary(site => site.Channel, site => site.Name, StringComparer.Ordinal);
        ImmutableArray<(Channel Channel, string Name)> audited =
        [
            .. recording.Channels
                .Where(channel => channel.NotAudited is null && channel.StoredLength > 0)
                .Where(channel => names.Count == 0 || names.ContainsKey(channel.Label))
                .Select(channel => (channel, names.GetValueOrDefault(channel.Label, channel.Label))),
        ];
        return audited.IsEmpty ? throw RecordingErrors.NoChannelLeft(recording) : audited;
    }

    /// <summary>The channels that are listed but not audited, with the cause.</summary>
    public static ImmutableArray<SkippedChannel> Skipped(Recording recording) =>
    [
        .. recording.Channels
            .Where(channel => channel.NotAudited is not null || channel.StoredLength == 0)
            .Select(channel => new SkippedChannel(channel.Label, channel.NotAudited ?? "no samples")),
    ];
}
