using System.Globalization;
using ChannelAudit.Results;
using ChannelAudit.Runs;

namespace ChannelAudit.Reports.Output;

/// <summary>A picture of a recording.</summary>
/// <param name="Name">The file's name, <c>session-ribbon.png</c> for instance.</param>
/// <param name="Png">The bytes of the PNG.</param>
public sealed record FigureFile(string Name, ReadOnlyMemory<byte> Png)
{
    /// <summary>The name of the picture that the report shows inside the page.</summary>
    public const string SessionRibbon = "session-ribbon.png";

    private const int LongestName = 32;

    /// <summary>The name of a channel's sheet: <c>channel-1-cheek.png</c>; numbered by file order, so that no two are alike.</summary>
    public static string SheetOf(RecordingResult recording, ChannelResult channel) =>
        $"channel-{Number(recording, channel.Name)}-{Short(channel.Name)}.png";

    /// <summary>The name of a pair's sheet: <c>pair-1-3-cheek-eye.png</c>.</summary>
    public static string SheetOf(RecordingResult recording, PairResult pair) =>
        $"pair-{Number(recording, pair.ChannelA)}-{Number(recording, pair.ChannelB)}-{Short(pair.ChannelA)}-{Short(pair.ChannelB)}.png";

    private static string Number(RecordingResult recording, string channel)
    {
        int index = recording.Channels.TakeWhile(one => !string.Equals(one.Name, channel, StringComparison.Ordinal)).Count();
        return (index + 1).ToString(CultureInfo.InvariantCulture);
    }

    private static string Short(string name) => RecordingId.Escape(name.Length <= LongestName ? name : name[..LongestName]);
}
