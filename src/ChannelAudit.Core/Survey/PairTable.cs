using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>What two channels share in each one-second segment; entry i of every list belongs to segment i of their group.</summary>
public sealed class PairTable
{
    /// <summary>Starts an empty table.</summary>
    /// <param name="bands">The pair's bands.</param>
    /// <param name="spill">Takes what of a long recording does not stay in memory.</param>
    public PairTable(PairBands bands, Spill? spill = null)
    {
        spill ??= new Spill();
        Bands = bands;
        (Rho, RhoHigh, Imaginary, GainAb, GainBa) = (new(spill), new(spill), new(spill), new(spill), new(spill));
    }

    /// <summary>The pair's bands.</summary>
    public PairBands Bands { get; }

    /// <summary>Re S_AB / sqrt(S_AA S_BB) over 30 to 250 Hz.</summary>
    public Column<float> Rho { get; }

    /// <summary>The same over 300 to 450 Hz; NaN without that band.</summary>
    public Column<float> RhoHigh { get; }

    /// <summary>Im S_AB / sqrt(S_AA S_BB) over 30 to 250 Hz.</summary>
    public Column<float> Imaginary { get; }

    /// <summary>Re S_AB / S_AA over 30 to 250 Hz.</summary>
    public Column<float> GainAb { get; }

    /// <summary>Re S_AB / S_BB over 30 to 250 Hz.</summary>
    public Column<float> GainBa { get; }
}
