namespace ChannelAudit.Measures;

/// <summary>The bins in which one harmonic of the mains is counted: the nearest to h x f0, and two on each side.</summary>
/// <param name="Harmonic">1 for the fundamental.</param>
/// <param name="Center">The nearest bin.</param>
public readonly record struct LineWindow(int Harmonic, int Center)
{
    /// <summary>Bins on each side of the centre.</summary>
    public const int Reach = 2;

    /// <summary>Bins in a window.</summary>
    public const int Width = (2 * Reach) + 1;
}
