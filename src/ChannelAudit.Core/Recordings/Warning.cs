namespace ChannelAudit.Recordings;

/// <summary>Something odd that was read all the same; kept in <c>audit.json</c>.</summary>
/// <param name="File">The file's name.</param>
/// <param name="Place">Where in it: "header, channel 3", "line 12", "record 9".</param>
/// <param name="Message">What was found and how it was taken.</param>
public sealed record Warning(string File, string Place, string Message);
