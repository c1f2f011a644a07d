using System.Collections.Immutable;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Setup;

namespace ChannelAudit.Drafts;

/// <summary>What a recording tells for a setup: its channels and the labels of its events. No other field of a header is looked at.</summary>
public sealed record SetupDraft
{
    // Any rate opens a file that lacks nothing else; samples are not looked at.
    private const decimal StandInHz = 1000;

    private const string CannotBeNamed = "no setup can name it: its label is not plain, or is another channel's";

    /// <summary>The recording's file name.</summary>
    public required string RecordingFile { get; init; }

    /// <summary>The channels that an audit without a setup looks at, in file order.</summary>
    public required ImmutableArray<DraftSite> Sites { get; init; }

    /// <summary>The other channels with the cause.</summary>
    public required ImmutableArray<SkippedChannel> Unlisted { get; init; }

    /// <summary>The events.</summary>
    public required DraftEvents Events { get; init; }

    /// <summary>Whether it is delimited text.</summary>
    public required bool IsText { get; init; }

    /// <summary>Whether it cannot be audited before a setup states its sampling rate.</summary>
    public required bool LacksRate { get; init; }

    /// <summary>Whether a channel has no unit in the file.</summary>
    public required bool LacksUnit { get; init; }

    /// <summary>Opens a recording and looks at its labels.</summary>
    /// <param name="path">The recording.</param>
    /// <exception cref="ChannelAuditException">When it cannot be read, or has no channel that can be audited and named.</exception>
    public static SetupDraft Of(string path)
    {
        RecordingCompanions companions = BidsCompanions.Find(path);
        using Recording recording = companions.ApplyTo(Open(path, out bool lacksRate));
        ImmutableArray<(Channel Channel, string Name)> audited = AuditedChannels.Of(recording, StudySetup.Empty);
        DraftNames names = new(recording);
        ImmutableArray<(Channel Channel, DraftSite? Site)> sites = [.. audited.Select(one => (one.Channel, names.SiteOf(one.Channel)))];
        if (sites.All(one => one.Site is null))
        {
            throw RecordingErrors.NoChannelToName(recording.FileName);
        }

        return new SetupDraft
        {
            RecordingFile = recording.FileName,
            Sites = [.. sites.Select(one => one.Site).OfType<DraftSite>()],
            Unlisted =
            [
                .. sites.Where(one => one.Site is null).Select(one => new SkippedChannel(one.Channel.Label, CannotBeNamed)),
                .. AuditedChannels.Skipped(recording, audited),
            ],
            Events = DraftEvents.Of(recording, companions),
            IsText = string.Equals(recording.Format, "text", StringComparison.Ordinal),
            LacksRate = lacksRate,
            LacksUnit = audited.Any(one => one.Channel.FileUnit.Length == 0),
        };
    }

    /// <summary>The setup file: the sites as they are, everything that is not known as lines to be filled in.</summary>
    public string ToText() => DraftText.Of(this);

    private static Recording Open(string path, out bool lacksRate)
    {
        lacksRate = false;
        ChannelAuditException unread;
        try
        {
            return RecordingOpener.Open(path, new ReadOptions());
        }
        catch (ChannelAuditException fault) when (fault.Kind == FaultKind.Recording)
        {
            unread = fault;
        }

        // A text file without a rate cannot be opened before a setup states one, and this is where the setup comes from.
        lacksRate = true;
        return OpenWithStandIn(path) ?? throw unread;
    }

    private static Recording? OpenWithStandIn(string path)
    {
        try
        {
            return RecordingOpener.Open(path, new ReadOptions(StandInHz));
        }
        catch (ChannelAuditException)
        {
            return null;
        }
    }
}
