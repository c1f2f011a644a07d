using ChannelAudit.Reports.Digests;

namespace ChannelAudit.Reports.Shares;

/// <summary>A recording that was audited in a share.</summary>
/// <param name="Id">What it is called.</param>
/// <param name="Folder">The folder of the share.</param>
/// <param name="Stamp">From what it was made.</param>
public sealed record SharedRecording(string Id, string Folder, RecordingStamp Stamp);
