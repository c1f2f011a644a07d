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
    public static string SheetOf(RecordingResult recording, ChannelResult channel)
    {
        string number = (recording.Channels.IndexOf(channel) + 1).ToString(CultureInfo.InvariantCulture);
        string name = channel.Name.Length <= LongestName ? channel.Name : channel.Name[..LongestName];
        return $"channel-{number}-{RecordingId.Escape(name)}.png";
    }
}
