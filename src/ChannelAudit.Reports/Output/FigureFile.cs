namespace ChannelAudit.Reports.Output;

/// <summary>A picture of a recording.</summary>
/// <param name="Name">The file's name, <c>session-ribbon.png</c> for instance.</param>
/// <param name="Png">The bytes of the PNG.</param>
public sealed record FigureFile(string Name, ReadOnlyMemory<byte> Png)
{
    /// <summary>The name of the picture that the report shows inside the page.</summary>
    public const string SessionRibbon = "session-ribbon.png";
}
