using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Setup;
using ChannelAudit.Text;

namespace ChannelAudit.Recordings;

/// <summary>Which channels are audited, and under which names.</summary>
internal static class AuditedChannels
{
    /// <summary>The channels that the setup names as sites, or all that can be audited when it names none.</summary>
    /// <exception cref="ChannelAuditException">When none is left, or the setup names a channel that is not there.</exception>
    public static ImmutableArray<(Channel Channel, string Name)> Of(Recording recording, StudySetup setup)
    {
        SetupCheck.Against(setup, recording.Channels.Select(channel => channel.RawLabel), recording.FileName);
        ImmutableArray<int> positions = SiteChannels.Locate(setup, recording.Channels.Select(channel => channel.RawLabel), recording.FileName);
        Dictionary<int, string> names = setup.Sites.Zip(positions).ToDictionary(pair => pair.Second, pair => pair.First.Name);
        ImmutableArray<(Channel Channel, string Name)> audited =
        [
            .. recording.Channels
                .Where(channel => channel.NotAudited is null && channel.StoredLength > 0)
                .Where(channel => names.Count == 0 ? channel.Index != Trigger(recording, setup) : names.ContainsKey(channel.Index))
                .Select(channel => (channel, names.GetValueOrDefault(channel.Index, channel.Label))),
        ];
        return audited.IsEmpty ? throw RecordingErrors.NoChannelLeft(recording) : audited;
    }

    /// <summary>The channels that are listed but not audited, with the cause.</summary>
    public static ImmutableArray<SkippedChannel> Skipped(Recording recording, ImmutableArray<(Channel Channel, string Name)> audited) =>
    [
        .. recording.Channels
            .Where(channel => audited.All(one => one.Channel.Index != channel.Index))
            .Select(channel => new SkippedChannel(channel.Label, Cause(channel))),
    ];

    /// <summary>Sites of the setup whose channel cannot be audited: they have no row in any table.</summary>
    public static ImmutableArray<Warning> SitesLeftOut(Recording recording, StudySetup setup, ImmutableArray<(Channel Channel, string Name)> audited)
    {
        ImmutableArray<int> positions = SiteChannels.Locate(setup, recording.Channels.Select(channel => channel.RawLabel), recording.FileName);
        return
        [
            .. setup.Sites.Zip(positions)
                .Where(pair => audited.All(one => one.Channel.Index != pair.Second))
                .Select(pair => (pair.First, Channel: recording.Channels[pair.Second]))
                .Select(pair => new Warning(
                    recording.FileName,
                    $"site '{pair.First.Name}'",
                    $"not audited, and in no table: channel '{OneLine.Of(pair.Channel.Label)}': {Cause(pair.Channel)}")),
        ];
    }

    // The setup says so, whatever the label: its codes are no signal of a muscle.
    private static int Trigger(Recording recording, StudySetup setup) => setup.Trials.Trigger.Channel is { } label
        ? SiteChannels.Names(recording.Channels.Select(channel => channel.RawLabel)).IndexOf(label)
        : -1;

    private static string Cause(Channel channel) =>
        channel.NotAudited ?? (channel.StoredLength == 0 ? "no samples" : "no site of the setup");
}
