using System.Collections.Immutable;

namespace ChannelAudit.Setup;

/// <summary>What was where: the content of <c>setup.toml</c>; every part is optional.</summary>
public sealed record StudySetup
{
    /// <summary>A setup that says nothing.</summary>
    public static StudySetup Empty { get; } = new();

    /// <summary>The <c>[recording]</c> table.</summary>
    public RecordingSetup Recording { get; init; } = new();

    /// <summary>The <c>[[sites]]</c> in file order.</summary>
    public ImmutableArray<SiteSetup> Sites { get; init; } = [];

    /// <summary>The <c>[trials]</c> table.</summary>
    public TrialSetup Trials { get; init; } = new();

    /// <summary>The <c>[scoring]</c> table; its window is that of <see cref="Trials"/>.</summary>
    public ScoringSetup Scoring { get; init; } = new();

    /// <summary>The <c>[protocol]</c> table; null when there is none.</summary>
    public ProtocolSetup? Protocol { get; init; }

    /// <summary>The file's name, or null when there is no file.</summary>
    public string? FileName { get; init; }

    /// <summary>SHA-256 of the file's bytes in lower-case hexadecimal, or null when there is no file.</summary>
    public string? Sha256 { get; init; }
}
