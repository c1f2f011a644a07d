namespace ChannelAudit.Synthesis;

/// <summary>A stretch of time in which a fault is present.</summary>
/// <param name="FromS">Start in seconds from the first sample.</param>
/// <param name="ToS">End in seconds, itself outside; null: the end of the recording.</param>
public sealed record FaultSpan(decimal FromS, decimal? ToS)
{
    /// <summary>The whole recording.</summary>
    public static FaultSpan Whole { get; } = new(0, null);

    /// <summary>The stretch of one trial.</summary>
    /// <param name="trial">The trial.</param>
    public static FaultSpan Of(PlannedTrial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return new FaultSpan(trial.OnsetS, trial.EndS);
    }
}
