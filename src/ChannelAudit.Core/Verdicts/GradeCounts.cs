namespace ChannelAudit.Verdicts;

/// <summary>How many of something have each verdict.</summary>
/// <param name="Pass">Can be scored.</param>
/// <param name="Questionable">A person should look.</param>
/// <param name="Reject">Should not be scored.</param>
public readonly record struct GradeCounts(int Pass, int Questionable, int Reject)
{
    /// <summary>All of them.</summary>
    public int Total => Pass + Questionable + Reject;

    /// <summary>Two counts added up.</summary>
    public GradeCounts Plus(GradeCounts other) => new(Pass + other.Pass, Questionable + other.Questionable, Reject + other.Reject);

    /// <summary>What there is more of each, which may be below 0.</summary>
    public GradeCounts Minus(GradeCounts other) => new(Pass - other.Pass, Questionable - other.Questionable, Reject - other.Reject);

    /// <summary>One more with a verdict.</summary>
    public GradeCounts Plus(Grade verdict) => verdict switch
    {
        Grade.Pass => this with { Pass = Pass + 1 },
        Grade.Questionable => this with { Questionable = Questionable + 1 },
        _ => this with { Reject = Reject + 1 },
    };
}
