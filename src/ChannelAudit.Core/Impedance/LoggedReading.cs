namespace ChannelAudit.Impedance;

/// <summary>One line of a table of readings.</summary>
/// <param name="Line">Its line in the file, from 1.</param>
/// <param name="From">One end: of a pair with the ground, the electrode.</param>
/// <param name="To">The other end: never the same as <paramref name="From"/>.</param>
/// <param name="Kohm">What the meter showed: a magnitude in kΩ, 0 or more, below <see cref="ImpedanceLimits.ImplausibleKohm"/>.</param>
/// <param name="Time">When, or null when it was not written down.</param>
/// <param name="Phase">When in the session: <c>before</c>, <c>after</c>, or a word of the lab's own for each preparation; null when not written down.</param>
/// <param name="Recording">Id of the recording that it belongs to, or null when the table does not say.</param>
public sealed record LoggedReading(
    int Line, SiteElectrode From, SiteElectrode To, double Kohm, ReadingTime? Time = null, string? Phase = null, string? Recording = null)
{
    private const string AfterTheSession = "after";

    /// <summary>The site of the first end.</summary>
    public string Site => From.Site;

    /// <summary>Which contacts it lies between.</summary>
    public ImpedancePair Pair => To.IsGround
        ? From.IsSecond ? ImpedancePair.BToGround : ImpedancePair.AToGround
        : string.Equals(From.Site, To.Site, StringComparison.Ordinal) ? ImpedancePair.AToB : ImpedancePair.Across;

    /// <summary>Whether it was taken when the session was over.</summary>
    public bool IsAfter => string.Equals(Phase, AfterTheSession, StringComparison.OrdinalIgnoreCase);

    /// <summary>The pair as a table writes it: <c>a-b</c>, <c>a-ground</c>, <c>b-ground</c>, <c>cheek.a-eye.b</c>.</summary>
    public string PairCode => Pair == ImpedancePair.Across ? $"{From}-{To}" : $"{From.Letter}-{To.Letter}";

    /// <summary>Whether two readings were taken in one phase; a phase that is not written down is one of its own.</summary>
    internal bool IsOfPhase(string? phase) => string.Equals(Phase, phase, StringComparison.OrdinalIgnoreCase);
}
