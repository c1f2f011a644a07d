namespace ChannelAudit.Results;

/// <summary>A channel that is listed but not audited.</summary>
/// <param name="Label">Its label.</param>
/// <param name="Cause">Why not.</param>
public sealed record SkippedChannel(string Label, string Cause)
{
    /// <summary>The cause of a signal that holds no samples but the events of the file.</summary>
    internal const string Annotations = "annotation signal";

    /// <summary>Whether it is a part of the format, no channel that anybody recorded.</summary>
    public bool IsAnnotations => string.Equals(Cause, Annotations, StringComparison.Ordinal);
}
