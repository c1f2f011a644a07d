using ChannelAudit.Detectability;

namespace ChannelAudit.Cli.Silence;

/// <summary>What <c>detectability</c> was asked for.</summary>
internal sealed record SilenceRequest
{
    /// <summary>The recording.</summary>
    public required string RecordingFile { get; init; }

    /// <summary>The setup, or null.</summary>
    public string? SetupFile { get; init; }

    /// <summary>The criteria, or null for the defaults.</summary>
    public string? CriteriaFile { get; init; }

    /// <summary>The events table, or null.</summary>
    public string? EventsFile { get; init; }

    /// <summary>Where files go, or null for none.</summary>
    public string? OutFolder { get; init; }

    /// <summary>How much is planted.</summary>
    public required DetectabilityOptions Options { get; init; }
}
