namespace ChannelAudit.Impedance;

/// <summary>The latest reading of one pair of a site.</summary>
/// <param name="Pair">Which pair; never <see cref="ImpedancePair.Across"/>.</param>
/// <param name="Course">Its readings, or null when there is none.</param>
public sealed record PairImpedance(ImpedancePair Pair, ImpedanceCourse? Course)
{
    /// <summary>The latest reading in kΩ, or null when there is none.</summary>
    public double? Kohm => Course?.Latest.Kohm;

    /// <summary>Its grade, or null when there is none: not available, never good.</summary>
    public ImpedanceGrade? Grade => Kohm is { } kohm ? ImpedanceLimits.GradeOf(kohm) : null;

    /// <summary>When it was taken, or null when that was not written down.</summary>
    public ReadingTime? Time => Course?.Latest.Time;

    /// <summary>In which phase it was taken, or null.</summary>
    public string? Phase => Course?.Latest.Phase;
}
