namespace ChannelAudit.Cli.Piloting;

/// <summary>What <c>pilot</c> was asked for.</summary>
internal sealed record PilotRequest
{
    /// <summary>The recording.</summary>
    public required string RecordingFile { get; init; }

    /// <summary>The setup, or null.</summary>
    public string? SetupFile { get; init; }

    /// <summary>The criteria, or null for the defaults.</summary>
    public string? CriteriaFile { get; init; }

    /// <summary>Impedance readings, or null.</summary>
    public string? ImpedanceFile { get; init; }

    /// <summary>The events table, or null.</summary>
    public string? EventsFile { get; init; }

    /// <summary>Where results go.</summary>
    public required string OutFolder { get; init; }

    /// <summary>Whether the picture is drawn.</summary>
    public bool WithPicture { get; init; } = true;

    /// <summary>Whether the recording is still being written.</summary>
    public bool Follow { get; init; }

    /// <summary>Why the session is started although the answer was another, or null.</summary>
    public string? StartBecause { get; init; }
}
