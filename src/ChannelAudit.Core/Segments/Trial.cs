namespace ChannelAudit.Segments;

/// <summary>A stretch of time that is scored, or during which the muscle was asked for something.</summary>
public sealed record Trial
{
    /// <summary>From 1, by onset, then file order.</summary>
    public required int Number { get; init; }

    /// <summary>The event's label, or null when it has none.</summary>
    public required string? Label { get; init; }

    /// <summary>What the muscle was asked to do.</summary>
    public required TrialRole Role { get; init; }

    /// <summary>Onset of the event, seconds from the first stored sample.</summary>
    public required decimal OnsetS { get; init; }

    /// <summary>Duration of the event in seconds.</summary>
    public required decimal DurationS { get; init; }

    /// <summary>Where the scoring window starts, seconds from the first stored sample.</summary>
    public required decimal WindowFromS { get; init; }

    /// <summary>Where the scoring window ends, seconds from the first stored sample.</summary>
    public required decimal WindowToS { get; init; }

    /// <summary>Where the baseline before the onset starts, or null when none was asked for; it ends at the onset.</summary>
    public decimal? BaselineFromS { get; init; }
}
