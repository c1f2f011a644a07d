namespace ChannelAudit.Measures;

/// <summary>What a measure is called and counted in.</summary>
/// <param name="Name">Its name in every table.</param>
/// <param name="Unit">Its unit as printed: <c>uV</c>, <c>dB</c>, <c>Hz</c>, <c>%</c>, <c>ms</c>, <c>uV/min</c>, <c>%/min</c>, <c>1/min</c>, <c>1</c>.</param>
/// <param name="Reason">The reason code it serves.</param>
/// <param name="Sense">On which side of a limit it is bad.</param>
/// <param name="Meaning">One line for people.</param>
public sealed record MeasureDefinition(string Name, string Unit, string Reason, LimitSense Sense, string Meaning)
{
    /// <summary>Another reason whose limits may ask for it, or null.</summary>
    public string? AlsoServes { get; init; }

    /// <summary>Whether only trials have it: it is no column of <c>channels.tsv</c>.</summary>
    public bool IsOfTrials { get; init; }

    /// <summary>How its limits are moved when they shall tolerate more or less fault.</summary>
    public LimitScale Scale => OwnScale ?? Unit switch { "dB" => LimitScale.Decibels, "%" => LimitScale.Share, _ => LimitScale.Size };

    /// <summary>The scale where the unit does not say it, or null.</summary>
    public LimitScale? OwnScale { get; init; }

    /// <summary>Whether limits of a reason may ask for it.</summary>
    public bool Serves(string reason) =>
        string.Equals(Reason, reason, StringComparison.Ordinal) || string.Equals(AlsoServes, reason, StringComparison.Ordinal);

    /// <summary>Whether a value has reached a limit.</summary>
    public bool Reaches(double value, double limit) => Sense switch
    {
        LimitSense.AtLeast => value >= limit,
        LimitSense.AtLeastMagnitude => Math.Abs(value) >= limit,
        _ => value <= limit,
    };
}
