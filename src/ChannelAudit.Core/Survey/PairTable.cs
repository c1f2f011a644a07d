using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>What two channels share in each one-second segment; entry i of every list belongs to segment i of their group.</summary>
public sealed class PairTable
{
    /// <summary>Starts an empty table.</summary>
    /// <param name="bands">The pair's bands.</param>
    public PairTable(PairBands bands) => Bands = bands;

    /// <summary>The pair's bands.</summary>
    public PairBands Bands { get; }

    /// <summary>Re S_AB / sqrt(S_AA S_BB) over 30 to 250 Hz.</summary>
    public List<float> Rho { get; } = [];

    /// <summary>The same over 300 to 450 Hz; NaN without that band.</summary>
    public List<float> RhoHigh { get; } = [];

    /// <summary>Im S_AB / sqrt(S_AA S_BB) over 30 to 250 Hz.</summary>
    public List<float> Imaginary { get; } = [];

    /// <summary>Re S_AB / S_AA over 30 to 250 Hz.</summary>
    public List<float> GainAb { get; } = [];

    /// <summary>Re S_AB / S_BB over 30 to 250 Hz.</summary>
    public List<float> GainBa { get; } = [];
}
