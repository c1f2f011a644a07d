namespace ChannelAudit.Runs;

/// <summary>A file to audit.</summary>
/// <param name="Id">What it is called in outputs, unique in the run.</param>
/// <param name="FilePath">Where it is, for opening it.</param>
/// <param name="RelativePath">Its path below the given root with <c>/</c>, for outputs.</param>
public sealed record RecordingEntry(string Id, string FilePath, string RelativePath);
