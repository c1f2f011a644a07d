namespace ChannelAudit.Reports.Digests;

/// <summary>By what a later run sees whether a recording must be audited again.</summary>
/// <param name="InputsSha256">Over the bytes of the recording and of everything else that its result depends on, and the version.</param>
/// <param name="Figures">The pictures that were asked for: <c>none</c>, <c>summary</c> or <c>all</c>.</param>
public sealed record RecordingStamp(string InputsSha256, string Figures)
{
    /// <summary>Of a recording that no later run may take over.</summary>
    public static RecordingStamp None { get; } = new(string.Empty, "none");
}
