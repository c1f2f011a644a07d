using System.Collections.Immutable;
using ChannelAudit.Runs;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Cli.Screening;

/// <summary>What <c>screen</c> was asked for.</summary>
internal sealed record ScreenRequest
{
    /// <summary>Recordings and folders of them.</summary>
    public required ImmutableArray<string> Paths { get; init; }

    /// <summary>Recordings that were found already; null: they are searched for.</summary>
    public ImmutableArray<RecordingEntry>? Known { get; init; }

    /// <summary>Whether the run counts as one over a single recording; null: as many as there are decide it.</summary>
    public bool? IsAlone { get; init; }

    /// <summary>Whether pictures come from elsewhere, so that nothing is gathered to draw them from.</summary>
    public bool DrawsNothing { get; init; }

    /// <summary>The setup, or null.</summary>
    public string? SetupFile { get; init; }

    /// <summary>The criteria, or null for the defaults.</summary>
    public string? CriteriaFile { get; init; }

    /// <summary>The events table, or null.</summary>
    public string? EventsFile { get; init; }

    /// <summary>The table of impedance readings, or null.</summary>
    public string? ImpedanceFile { get; init; }

    /// <summary>Where results go.</summary>
    public required string OutFolder { get; init; }

    /// <summary>Recordings audited at the same time, 1 or more.</summary>
    public int Jobs { get; init; } = Environment.ProcessorCount;

    /// <summary>The part of the recordings that is audited; null: all.</summary>
    public RecordingShare? Share { get; init; }

    /// <summary>Pictures to draw; null: all for one recording, a summary for several.</summary>
    public FigureChoice? Figures { get; init; }

    /// <summary>Whether tables are written as Parquet files too.</summary>
    public bool WithParquet { get; init; }

    /// <summary>The verdict that makes the run fail, or null.</summary>
    public Grade? FailOn { get; init; }
}
